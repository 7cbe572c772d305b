// What the proof says: so far while it is made, and whole at the end.
import { openLive } from "../state/live";
import type { Scenario } from "../state/proof";
import { busy, cancelProof, draws, moreDraws, plan, planAnew, soFar, view, w } from "../state/store";
import { Core, MarginBar, titleOf } from "./parts";
import { Term } from "./term";

/// The scenarios as they stand, from the runs so far or the finished proof; the nearest to failing first.
export function standing(): Scenario[] {
  const whole = plan.value?.proof.scenarios ?? [];
  const list: Scenario[] = whole.length
    ? whole.map((each) => ({ name: each.name, runs: each.runs, failed: each.failed, margin: each.margin, draw: each.worst.draw, says: each.worst.says }))
    : (soFar.value?.scenarios ?? []);
  return [...list].sort((a, b) => (b.failed > 0 ? 1 : 0) - (a.failed > 0 ? 1 : 0) || a.margin - b.margin);
}

export function ProofStrip() {
  const t = w.value.proof;
  const known = soFar.value;
  const list = standing();
  const broken = list.filter((each) => each.failed > 0);
  const whole = (plan.value?.proof.scenarios.length ?? 0) > 0;
  const sign = broken.length ? "✗" : whole ? "✓" : "…";
  const says = broken.length ? t.breaks : whole ? t.proven : known ? t.soFarGood : t.noneYet;
  return (
    <section class={broken.length ? "proofstrip fails" : "proofstrip"} aria-labelledby="strip-name">
      <h2 id="strip-name">
        {t.title} <Term of="proof" />
      </h2>
      <p class="verdict" role="status">
        <b>
          {sign} {says}
        </b>
        {broken.slice(0, 3).map((each) => (
          <span class="broken">
            {titleOf(each.name)} ({each.failed}/{each.runs})
          </span>
        ))}
        {broken.length > 3 && <span class="broken">+{broken.length - 3}</span>}
      </p>
      {busy.value ? (
        <p class="progress">
          <progress max={known?.all ?? 1} value={known?.done ?? 0} aria-label={t.running} />
          <span>
            {known?.done ?? 0} {t.of} {known?.all ?? "…"} {t.draws}
          </span>
          <button type="button" class="small" onClick={cancelProof}>
            {t.stop}
          </button>
        </p>
      ) : (
        <p class="progress">
          {whole && (
            <span>
              {plan.value!.proof.draws} {t.draws}
            </span>
          )}
          {(!whole || draws.value < moreDraws) && (
            <button
              type="button"
              class="small"
              onClick={() => {
                if (whole) draws.value = moreDraws;
                void planAnew();
              }}
            >
              {whole ? `${t.start}: ${moreDraws}` : t.start}
            </button>
          )}
        </p>
      )}
    </section>
  );
}

function watch(scenario: string, draw: number) {
  view.value = "well";
  void openLive({ scenario, draw });
  document.getElementById("content")?.scrollIntoView();
}

export function Scenarios() {
  const t = w.value.proof;
  const list = standing();
  const english = new Map(plan.value?.proof.scenarios.map((each) => [each.name, each.title]));
  return (
    <section class="scenarios" aria-labelledby="scenarios-name">
      <h2 id="scenarios-name">
        {t.title} <Term of="margin" />
      </h2>
      <ul>
        {list.map((each) => (
          <li key={each.name}>
            <div class="head">
              <h3>{titleOf(each.name, english.get(each.name))}</h3>
              <span>{each.failed ? `✗ ${t.breaksIn} ${each.failed} ${t.of} ${each.runs}` : `✓ ${t.holds} ${each.runs}`}</span>
            </div>
            <MarginBar margin={each.margin} label={w.value.settings.margin} />
            <p class="note">
              <Core says={each.says} />
            </p>
            <button type="button" class="small" onClick={() => watch(each.name, each.draw)}>
              ▶ {t.watch}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

export function WholeProof() {
  const t = w.value.proof;
  const whole = plan.value;
  if (!whole?.proof.scenarios.length) return null;
  return (
    <section aria-labelledby="limits-name">
      <h2 id="limits-name">{t.margins}</h2>
      <ul class="plain">
        {whole.proof.margins.map((each) => (
          <li>
            <b>{w.value.marginNames[each.key] ?? each.key}</b>: <Core says={each.says} />
          </li>
        ))}
      </ul>
      {whole.proof.measure.length > 0 && (
        <>
          <h2>{t.measure}</h2>
          <ol class="plain">
            {whole.proof.measure.slice(0, 4).map((each) => (
              <li>
                <b>{w.value.fieldNames[each.key] ?? each.key}</b>: <Core says={each.how} /> ({Math.round(each.minutes)} {t.minutes})
              </li>
            ))}
          </ol>
        </>
      )}
    </section>
  );
}
