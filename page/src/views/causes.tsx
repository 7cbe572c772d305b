// The causes as the core ranks them: how likely with what error, what speaks for and against, what to do; how often each
// is behind such calls beforehand, which may be changed; the next check and what each answer would mean.
import { useState } from "preact/hooks";
import { kinds } from "../state/bands";
import { figure, nothingTold } from "../state/told";
import { change, open, system, w } from "../state/store";
import { shownIn } from "../state/units";
import { Core } from "./parts";

export interface Cause {
  key: string;
  title: string;
  prior: number;
  posterior: number;
  posterior_error: number;
  possible: boolean;
  says: string;
  severity: string;
  evidence: { for: boolean; log_odds: number; says: string }[];
  todo: string;
}

export interface Question {
  key: string;
  title: string;
  how: string;
  minutes: number;
  information_bits: number;
  answers: { word: string; says: string; seen: string; share: number; leader: string; leader_posterior: number }[];
  usual?: { unit: string; low: number; high: number };
}

/// "62 ± 4 %", as the core writes it.
export function shareText(share: number, error = 0): string {
  if (share > 0.995) return "> 99 %";
  if (share < 0.005) return "< 1 %";
  const whole = (100 * share).toFixed(0);
  return error < 0.005 ? `${whole} %` : `${whole} ± ${Math.max(1, 100 * error).toFixed(0)} %`;
}

/// A cause's name in the language of the page; the core's own where there is none.
export function CauseName({ of, title }: { of: string; title: string }) {
  const known = w.value.faults[of];
  return known ? <>{known}</> : <Core says={title} />;
}

export function CauseCard({ cause, open: opened }: { cause: Cause; open: boolean }) {
  const t = w.value.history;
  const speaks = (side: boolean) => cause.evidence.filter((each) => each.for === side);
  const percent = (share: number) => `${Math.max(0, Math.min(100, 100 * share))}%`;
  const ends = [cause.posterior - cause.posterior_error, cause.posterior + cause.posterior_error].map((each) => Math.max(0, Math.min(1, each)));
  return (
    <li class="cause">
      <div class="head">
        <h3>
          <CauseName of={cause.key} title={cause.title} />
        </h3>
        <b>{shareText(cause.posterior, cause.posterior_error)}</b>
      </div>
      <div class="share" role="img" aria-label={`${t.share} ${shareText(cause.posterior, cause.posterior_error)}`}>
        <span style={{ width: `max(1%, ${percent(cause.posterior)})` }} />
        <i style={{ left: percent(ends[0]!), width: percent(ends[1]! - ends[0]!) }} />
      </div>
      <p class="note">
        {t.before}: {shareText(cause.prior)}
      </p>
      <details open={opened}>
        <summary>{t.closer}</summary>
        <p>
          {cause.key === "none" ? (
            t.noneSays
          ) : (
            <Core says={[cause.says, cause.severity].filter(Boolean).join(" ")} />
          )}
        </p>
        {[true, false].map(
          (side) =>
            speaks(side).length > 0 && (
              <>
                <h4>{side ? `+ ${t.for}` : `− ${t.against}`}</h4>
                <ul class="plain">
                  {speaks(side).map((each) => (
                    <li>
                      <Core says={each.says} /> <span class="note">({each.log_odds > 0 ? "+" : ""}{each.log_odds.toFixed(1)})</span>
                    </li>
                  ))}
                </ul>
              </>
            ),
        )}
        {cause.todo && (
          <p>
            <b>{t.todo}:</b> <Core says={cause.todo} />
          </p>
        )}
      </details>
    </li>
  );
}

export function Priors({ causes, busy, anew }: { causes: Cause[]; busy: boolean; anew: () => void }) {
  const t = w.value.history;
  const told = open.value.told ?? nothingTold;
  const set = (key: string, text: string) => change({ told: { ...(open.value.told ?? nothingTold), priors: { ...(open.value.told ?? nothingTold).priors, [key]: text } } });
  const given = Object.values(told.priors).some((each) => each.trim());
  return (
    <details>
      <summary>
        {t.priors} {given && "✎"}
      </summary>
      <p class="note">{t.priorsHelp}</p>
      <div class="scroll" tabIndex={0} role="region" aria-label={t.priors}>
        <table class="priors">
          <thead>
            <tr>
              <th scope="col">{t.cause}</th>
              <th scope="col">{t.before} (%)</th>
              <th scope="col">{t.after}</th>
            </tr>
          </thead>
          <tbody>
            {[...causes]
              .sort((a, b) => b.prior - a.prior)
              .map((each) => (
                <tr>
                  <th scope="row" id={`prior-${each.key}`}>
                    <CauseName of={each.key} title={each.title} />
                  </th>
                  <td>
                    <input
                      aria-labelledby={`prior-${each.key}`}
                      inputMode="decimal"
                      placeholder={(100 * each.prior).toFixed(1)}
                      value={told.priors[each.key] ?? ""}
                      onInput={(event) => set(each.key, event.currentTarget.value)}
                    />
                  </td>
                  <td>{each.possible ? shareText(each.posterior, each.posterior_error) : t.notHere}</td>
                </tr>
              ))}
          </tbody>
        </table>
      </div>
      <div class="row">
        <button type="button" disabled={busy || !given} onClick={anew}>
          {t.rankAnew}
        </button>
        <button
          type="button"
          disabled={busy || !given}
          onClick={() => {
            change({ told: { ...(open.value.told ?? nothingTold), priors: {} } });
            anew();
          }}
        >
          ↺ {t.priorsBack}
        </button>
      </div>
    </details>
  );
}

export function Check({ question, causes, busy, answer }: { question: Question; causes: Cause[]; busy: boolean; answer: (value: string, seen: string) => void }) {
  const t = w.value.history;
  const [text, type] = useState("");
  const kind = question.usual && kinds[question.usual.unit];
  const unit = kind && kind !== "none" ? shownIn(kind, system.value).unit : "";
  const titleOf = (key: string) => causes.find((each) => each.key === key)?.title ?? key;
  return (
    <li class="test">
      <h3>
        <Core says={question.title} />
      </h3>
      <p class="note">
        {Math.round(question.minutes)} {w.value.proof.minutes}, {question.information_bits.toFixed(2)} bit
      </p>
      <p>
        <Core says={question.how} />
      </p>
      <ul class="answers">
        {question.answers.map((one) => (
          <li>
            <button type="button" disabled={busy} onClick={() => answer(one.word, one.seen)}>
              <Core says={one.seen} />
            </button>
            <span>
              {t.expected} {shareText(one.share)}; {t.then} <CauseName of={one.leader} title={titleOf(one.leader)} />: {shareText(one.leader_posterior)}
            </span>
          </li>
        ))}
      </ul>
      {unit && (
        <div class="row">
          <label class="box">
            <span>
              {t.orRead} ({unit})
            </span>
            <input inputMode="decimal" value={text} onInput={(event) => type(event.currentTarget.value)} />
          </label>
          <button type="button" disabled={busy || !text.trim()} onClick={() => answer(figure(text, unit), figure(text, unit))}>
            {t.answer}
          </button>
        </div>
      )}
    </li>
  );
}
