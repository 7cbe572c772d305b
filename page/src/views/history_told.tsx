// What is told besides the list of stops: one more stop, what is noticed, what the drive shows, what changed lately.
import { useState } from "preact/hooks";
import { rowsOf } from "../state/readings";
import { change, open, system, view, w } from "../state/store";
import { changes, displayFields, displayUnit, nothingTold, type Symptom, symptoms, type Told } from "../state/told";
import { shownIn } from "../state/units";

const told = () => open.value.told ?? nothingTold;
const tell = (by: Partial<Told>) => change({ told: { ...told(), ...by } });

/// A stop by its kind and the clock, for who does not type lines.
function OneStop() {
  const t = w.value.history;
  const [kind, choose] = useState("dry_run");
  const [when, set] = useState("");
  const add = () => {
    const before = open.value.history;
    change({ history: `${before}${before && !before.endsWith("\n") ? "\n" : ""}${when.replace("T", " ")}: ${kind.replaceAll("_", " ")}\n` });
  };
  return (
    <div class="boxes addstop">
      <label class="box way">
        <span>{t.kindOfStop}</span>
        <select value={kind} onChange={(event) => choose(event.currentTarget.value)}>
          {Object.entries(w.value.causes).map(([key, says]) => (
            <option value={key}>{says}</option>
          ))}
        </select>
      </label>
      <label class="box way">
        <span>{t.when}</span>
        <input type="datetime-local" value={when} onInput={(event) => set(event.currentTarget.value)} />
      </label>
      <button type="button" disabled={!when} onClick={add}>
        + {t.addStop}
      </button>
    </div>
  );
}

function Noticed({ of }: { of: Symptom }) {
  const t = w.value.history;
  const now = told().noticed[of];
  const set = (next: { seen: boolean; value?: string } | undefined) => {
    const noticed = { ...told().noticed };
    if (next) noticed[of] = next;
    else delete noticed[of];
    tell({ noticed });
  };
  const unit = of === "cycles" ? "s" : shownIn("pressure", system.value).unit;
  const name = t.symptoms[of]!;
  return (
    <li class="noticed">
      <span id={`noticed-${of}`}>{name}</span>
      <div class="pick3" role="group" aria-labelledby={`noticed-${of}`}>
        <button type="button" class="small" aria-pressed={now?.seen === true} onClick={() => set(now?.seen === true ? undefined : { seen: true })}>
          {t.yes}
        </button>
        <button type="button" class="small" aria-pressed={now?.seen === false} onClick={() => set(now?.seen === false ? undefined : { seen: false })}>
          {t.no}
        </button>
        {now?.seen && (of === "cycles" || of === "hunts") && (
          <label class="box">
            <span>
              {of === "cycles" ? t.every : t.by} ({unit})
            </span>
            <input inputMode="decimal" value={now.value ?? ""} onInput={(event) => set({ seen: true, value: event.currentTarget.value })} />
          </label>
        )}
      </div>
    </li>
  );
}

export function ToldForm() {
  const t = w.value.history;
  const now = told();
  const readings = rowsOf(open.value.readings).filter((row) => Object.values(row.values).some((each) => each?.trim())).length;
  const count = Object.keys(now.noticed).length;
  return (
    <>
      <OneStop />
      <details>
        <summary>
          {t.noticed} {count > 0 && `(${count})`}
        </summary>
        <p class="note">{t.noticedHelp}</p>
        <ul class="noticedlist">
          {symptoms.map((each) => (
            <Noticed key={each} of={each} />
          ))}
        </ul>
      </details>
      <details>
        <summary>
          {t.shows} {Object.values(now.display).some((each) => each?.trim()) && "✓"}
        </summary>
        <div class="boxes">
          <label class="box">
            <span>{t.taps}</span>
            <select value={now.taps} onChange={(event) => tell({ taps: event.currentTarget.value as Told["taps"] })}>
              <option value="">{w.value.none}</option>
              <option value="open">{t.tapOpen}</option>
              <option value="shut">{t.tapsShut}</option>
            </select>
          </label>
          {displayFields.map((each) => (
            <label class="box">
              <span>
                {t.display[each]} ({displayUnit(each, system.value)})
              </span>
              <input inputMode="decimal" value={now.display[each] ?? ""} onInput={(event) => tell({ display: { ...told().display, [each]: event.currentTarget.value } })} />
            </label>
          ))}
        </div>
        <p class="row">
          <span>
            {t.readings}: {readings}
          </span>
          <button type="button" class="small" onClick={() => (view.value = "visit")}>
            {t.toReadings}
          </button>
        </p>
      </details>
      <details>
        <summary>
          {t.changed} {now.changed.length + (now.changedOtherwise.trim() ? 1 : 0) > 0 && `(${now.changed.length + (now.changedOtherwise.trim() ? 1 : 0)})`}
        </summary>
        <div class="row">
          {changes.map((each) => (
            <button
              type="button"
              class="small"
              aria-pressed={now.changed.includes(each)}
              onClick={() => tell({ changed: now.changed.includes(each) ? now.changed.filter((one) => one !== each) : [...now.changed, each] })}
            >
              {t.changes[each] ?? each}
            </button>
          ))}
        </div>
        <label class="box">
          <span>{t.changedOtherwise}</span>
          <input value={now.changedOtherwise} onInput={(event) => tell({ changedOtherwise: event.currentTarget.value })} />
        </label>
      </details>
    </>
  );
}
