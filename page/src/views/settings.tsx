// The settings, each with its reason and its margin; one moved here is proved at once.
import { useState } from "preact/hooks";
import type { CardEntry, Setting } from "../state/plan";
import type { Scenario } from "../state/proof";
import { settingsToml } from "../state/settings_toml";
import { speaksFor } from "../state/speaks_for";
import { siOf, stepped, steps, typed } from "../state/steps";
import { change, derivedTexts, findings, give, open, plan, system, w } from "../state/store";
import { CardChoice, OnDrive } from "./card";
import { Cautions, Core, FindingList, InEnglish, MarginBar, save } from "./parts";
import { ProofStrip, Scenarios, standing, WholeProof } from "./proof";
import { Term } from "./term";

const termOf: Record<string, string> = {
  "pressure.target": "target",
  "pressure.wake_drop": "wake_drop",
  "pressure.stop_above": "stop_above",
  "sensor.full_scale": "sensor",
  "motor.current_limit": "current_limit",
  "speed.floor": "floor",
  "speed.ceiling": "ceiling",
  "speed.ramp_up": "ramp",
  "regulator.gain": "gain",
  "regulator.reset_time": "reset_time",
  "sleep.speed_below": "sleep",
  "dry_run.amps_below": "dry_run",
  "dry_run.rest": "rest",
  "dry_run.power_below": "dry_run",
  "closed.amps_below": "closed",
  "closed.power_below": "closed",
  "long_run.limit": "long_run",
  "fill.time": "fill",
  "permissive.sense": "permissive",
  "fault_contact.sense": "fault_contact",
};

const choices: Record<string, string[]> = {
  "permissive.sense": ["unused", "closed_runs", "open_runs"],
  "fault_contact.sense": ["closes_on_stop", "opens_on_stop"],
};

/// The smallest margin of the scenarios that a setting answers for.
export function marginOf(key: string, list: Scenario[]): number | undefined {
  const names = speaksFor[key] ?? [];
  const found = list.filter((each) => names.includes(each.name) && each.runs > 0).map((each) => each.margin);
  return found.length ? Math.min(...found) : undefined;
}

function Row({ name, one, list, entry }: { name: string; one: Setting; list: Scenario[]; entry?: CardEntry | undefined }) {
  const t = w.value.settings;
  const [draft, type] = useState<string | undefined>(undefined);
  const margin = marginOf(name, list);
  const given = open.value.set[name] !== undefined;
  const move = (up: boolean) => {
    // Presses come faster than the plan: each goes on from the one before.
    const now = siOf(name, open.value.set[name] ?? "", system.value) ?? one.value;
    const next = typeof now === "number" ? stepped(name, now, up, system.value, entry?.step ?? 0) : undefined;
    if (next) give(name, next);
  };
  const label = w.value.settingNames[name] ?? name;
  const id = `set-${name}`;
  return (
    <li class={given ? "setting given" : "setting"}>
      <div class="head">
        <label for={id}>{label}</label>
        {termOf[name] && <Term of={termOf[name]!} />}
        {given && <span class="tag">✎ {t.given}</span>}
      </div>
      <code class="key">{name}</code>
      {entry && (
        <p class="enter">
          {w.value.card.enter}: <b>{entry.label}</b> = <b class="value">{entry.enter}</b>
          {entry.where && <span class="note"> ({entry.where})</span>}
          {entry.clipped && <span class="tag">{entry.fixed ? w.value.card.fixed : w.value.card.clipped}</span>}
        </p>
      )}
      <div class="dial">
        {steps[name] ? (
          <>
            <button type="button" aria-label={`${label}: ${t.less}`} onClick={() => move(false)}>
              −
            </button>
            <input
              id={id}
              value={draft ?? (entry ? one.text : (open.value.set[name] ?? one.text))}
              onInput={(event) => type(event.currentTarget.value)}
              onBlur={() => {
                if (draft !== undefined && draft.trim() && draft !== one.text) give(name, typed(name, draft, system.value));
                type(undefined);
              }}
              onKeyDown={(event) => event.key === "Enter" && event.currentTarget.blur()}
            />
            <button type="button" aria-label={`${label}: ${t.more}`} onClick={() => move(true)}>
              +
            </button>
          </>
        ) : (
          <select id={id} value={String(one.value)} onChange={(event) => give(name, event.currentTarget.value)}>
            {(choices[name] ?? [String(one.value)]).map((each) => (
              <option value={each}>{each.replaceAll("_", " ")}</option>
            ))}
          </select>
        )}
      </div>
      {given && (
        <button type="button" class="small" onClick={() => give(name, undefined)}>
          ↺ {t.derived}: {derivedTexts.value[name]}
        </button>
      )}
      {margin !== undefined ? <MarginBar margin={margin} label={t.margin} /> : <p class="note">{t.noMargin}</p>}
      <details>
        <summary>{t.because}</summary>
        <p>
          <Core says={one.because} />
        </p>
      </details>
      {!one.feasible && (
        <p class="warn">
          ⚠ {t.notWell}{" "}
          {one.stands_in_the_way && (
            <>
              {t.way}: <Core says={one.stands_in_the_way} />{" "}
            </>
          )}
          {one.would_change_it && (
            <>
              {t.change}: <Core says={one.would_change_it} />
            </>
          )}
        </p>
      )}
    </li>
  );
}

export function SettingsView() {
  const t = w.value.settings;
  const now = plan.value;
  const list = standing();
  const groups = new Map<string, [string, Setting][]>();
  for (const [key, one] of Object.entries(now?.settings ?? {})) {
    const group = key.split(".")[0]!;
    groups.set(group, [...(groups.get(group) ?? []), [key, one]]);
  }
  return (
    <>
      <section class="lead">
        <h2>{t.title}</h2>
        <p>{t.lead}</p>
        <InEnglish />
        <div class="row">
          <button type="button" disabled={!Object.keys(open.value.set).length} onClick={() => change({ set: {} })}>
            ↺ {t.allDerived}
          </button>
          <button type="button" disabled={!now} onClick={() => now && save("settings.toml", settingsToml(now.site.name, now))}>
            ⤓ {t.save}
          </button>
        </div>
      </section>
      <FindingList findings={findings.value} />
      <ProofStrip />
      <CardChoice />
      {now?.drive && <OnDrive drive={now.drive} settings={now.settings} />}
      <div class="groups">
        {[...groups].map(([group, rows]) => (
          <section class="group" key={group}>
            <h2>{t.groups[group] ?? group}</h2>
            <ul>
              {rows.map(([key, one]) => (
                <Row key={key} name={key} one={one} list={list} entry={now?.drive?.entries.find((each) => each.key === key)} />
              ))}
            </ul>
          </section>
        ))}
      </div>
      <WholeProof />
      <Cautions list={now?.cautions ?? []} />
      <Scenarios />
    </>
  );
}
