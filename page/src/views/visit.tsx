// At the well: tests to tick off with the bands that are expected, readings to enter, and the fit at once.
import { useState } from "preact/hooks";
import { type Finding, findingsOf } from "../core/protocol";
import { conditions, instruments, readingsToml, type Row, rowsOf, unitOf } from "../state/readings";
import { askSlow, change, open, system, w } from "../state/store";
import { Core, FindingList } from "./parts";
import { VisitSheet } from "./visit_sheet";

interface Fitted {
  settings_stand: boolean;
  says: string;
  sensor: { says: string } | null;
  unknowns: { key: string; before: string; after: string; shift_sigmas: number; tells: boolean }[];
  misfits: { reading: number; instrument: string; says: string }[];
}

function Result({ fitted, narrower }: { fitted: Fitted; narrower?: string | undefined }) {
  const t = w.value.visit;
  const told = fitted.unknowns.filter((each) => each.tells);
  return (
    <section class={fitted.settings_stand ? "outcome right" : "outcome"} aria-live="polite">
      <h3>{fitted.settings_stand ? `✓ ${t.stand}` : `✗ ${t.standNot}`}</h3>
      <p>
        <Core says={fitted.says} />
      </p>
      {fitted.sensor && (
        <p>
          <b>{t.trim}</b>: <Core says={fitted.sensor.says} />
        </p>
      )}
      {fitted.misfits.map((each) => (
        <p class="warn">
          ⚠ {t.misfits}: <Core says={each.says} />
        </p>
      ))}
      {told.length > 0 && (
        <div class="scroll" tabIndex={0} role="region" aria-label={t.narrowed}>
          <table>
            <caption>{t.narrowed}</caption>
            <thead>
              <tr>
                <th scope="col" />
                <th scope="col">{t.before}</th>
                <th scope="col">{t.after}</th>
                <th scope="col">σ</th>
              </tr>
            </thead>
            <tbody>
              {told.map((each) => (
                <tr>
                  <th scope="row">{w.value.fieldNames[each.key] ?? <code>{each.key}</code>}</th>
                  <td>{each.before}</td>
                  <td>{each.after}</td>
                  <td>{each.shift_sigmas.toFixed(1)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {narrower && (
        <button type="button" class="strong" onClick={() => change({ site: { ...open.value.site, text: narrower } })}>
          {t.into}
        </button>
      )}
    </section>
  );
}

function Reading({ row, at, set, remove }: { row: Row; at: number; set: (row: Row) => void; remove: () => void }) {
  const t = w.value.visit;
  return (
    <fieldset class="field reading">
      <legend>
        {at + 1}. {t.conditions[row.condition]}
      </legend>
      <label class="box way">
        <span>{t.condition}</span>
        <select value={row.condition} onChange={(event) => set({ ...row, condition: event.currentTarget.value })}>
          {conditions.map((each) => (
            <option value={each}>{t.conditions[each]}</option>
          ))}
        </select>
      </label>
      <div class="boxes">
        {instruments.map((each) => (
          <label class="box">
            <span>
              {t.instruments[each]} [{unitOf(each, system.value)}]
            </span>
            <input inputMode="decimal" value={row.values[each] ?? ""} onInput={(event) => set({ ...row, values: { ...row.values, [each]: event.currentTarget.value } })} />
          </label>
        ))}
      </div>
      <button type="button" class="small" onClick={remove}>
        {t.remove}
      </button>
    </fieldset>
  );
}

export function VisitView() {
  const t = w.value.visit;
  const rows = rowsOf(open.value.readings);
  const [working, work] = useState(false);
  const [wrong, find] = useState<Finding[]>([]);
  const [result, tell] = useState<{ fitted: Fitted; narrower?: string | undefined } | undefined>(undefined);
  const store = (next: Row[]) => change({ readings: JSON.stringify(next) });
  const add = () => {
    const had = new Set(rows.map((row) => row.condition));
    store([...rows, { condition: conditions.find((each) => !had.has(each)) ?? "flow", values: {} }]);
  };
  const fit = async () => {
    const text = readingsToml(rows, system.value);
    tell(undefined);
    if (!text) {
      find([{ file: "", line: 0, column: 0, key: "", found: t.nothing, expected: "", nearest: "" }]);
      return;
    }
    work(true);
    const answer = await askSlow("fit", { draws: 32, into: "narrower.toml" }, { readings: { file: "readings.toml", text } });
    work(false);
    if (answer.exit_code > 1) {
      find(findingsOf(answer));
      return;
    }
    find([]);
    tell({ fitted: JSON.parse(answer.out) as Fitted, narrower: answer.files.find((file) => file.name === "narrower.toml")?.text });
  };
  return (
    <>
      <section class="lead">
        <h2>{t.title}</h2>
        <p>{t.lead}</p>
      </section>
      <VisitSheet />
      <section aria-labelledby="readings-name">
        <h2 id="readings-name">{t.reading}</h2>
        {rows.map((row, i) => (
          <Reading key={i} row={row} at={i} set={(next) => store(rows.map((each, k) => (k === i ? next : each)))} remove={() => store(rows.filter((_, k) => k !== i))} />
        ))}
        <div class="row">
          <button type="button" onClick={add}>
            + {t.add}
          </button>
          <button type="button" class="strong" disabled={working} onClick={() => void fit()}>
            {working ? `${t.fitting} …` : t.fit}
          </button>
        </div>
      </section>
      <FindingList findings={wrong} />
      {result && <Result {...result} />}
    </>
  );
}
