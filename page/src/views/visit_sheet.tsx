// The sheet for the visit: before power, the values to enter, and tests with the bands that are to be seen. Figures
// entered here are held against the bands, and go to the readings that are fitted.
import { signal } from "@preact/signals";
import { useState } from "preact/hooks";
import { type Finding, findingsOf } from "../core/protocol";
import { type BandReading, insideBand } from "../state/bands";
import { askSlow, open, plan, system, w } from "../state/store";
import { Core, FindingList, InEnglish, save } from "./parts";

interface VisitTest {
  test: string;
  title: string;
  steps: string[];
  not_done?: string;
  readings: BandReading[];
  put_back: string[] | string;
}

interface Tick {
  what: string;
  says: string;
}

export interface Sheet {
  says: string;
  safety: Tick[];
  before_power: { lines: Tick[] };
  entries: { label: string; where: string; value: string; note: string }[];
  unguarded: string[];
  tests: VisitTest[];
}

const sheets = signal<Record<string, { sheet: Sheet; html: string }>>({});
const entered = signal<Record<string, string>>({});
const ticked = signal<Record<string, boolean>>({});

function Ticks({ name, lines }: { name: string; lines: Tick[] }) {
  return (
    <ul>
      {lines.map((line, i) => {
        const key = `${open.value.id}/${name}/${i}`;
        return (
          <li class="test">
            <label class="tick">
              <input type="checkbox" checked={ticked.value[key] ?? false} onChange={(event) => (ticked.value = { ...ticked.value, [key]: event.currentTarget.checked })} />
              <Core says={line.what} />
            </label>
            <p class="note">
              <Core says={line.says} />
            </p>
          </li>
        );
      })}
    </ul>
  );
}

function Entries({ sheet }: { sheet: Sheet }) {
  const t = w.value.card;
  return (
    <>
      <h3>
        {t.label}
        {open.value.card && `: ${plan.value?.drive?.name ?? ""}`}
      </h3>
      <div class="scroll" tabIndex={0} role="region" aria-label={t.label}>
        <table class="entries">
          <thead>
            <tr>
              <th scope="col">{t.label}</th>
              <th scope="col">{t.value}</th>
              <th scope="col">{t.where}</th>
            </tr>
          </thead>
          <tbody>
            {sheet.entries.map((each) => (
              <tr>
                <th scope="row">{each.label}</th>
                <td class="value">
                  <Core says={each.value} /> {each.note && <Core says={each.note} />}
                </td>
                <td>
                  <Core says={each.where} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {sheet.unguarded.map((each) => (
        <p class="warn">
          <Core says={each} />
        </p>
      ))}
    </>
  );
}

function Test({ test }: { test: VisitTest }) {
  const t = w.value.visit;
  const name = `${open.value.id}/${test.test}`;
  return (
    <li class="test">
      <label class="tick">
        <input type="checkbox" checked={ticked.value[name] ?? false} onChange={(event) => (ticked.value = { ...ticked.value, [name]: event.currentTarget.checked })} />
        <Core says={test.title} />
        <span class="unseen"> {t.done}</span>
      </label>
      <ol class="plain">
        {test.steps.map((each) => (
          <li>
            <Core says={each} />
          </li>
        ))}
      </ol>
      <div class="boxes">
        {test.readings.map((each) => {
          const key = `${name}/${each.key}/${each.what}`;
          const text = entered.value[key] ?? "";
          const inside = insideBand(text, each, system.value);
          return (
            <label class="box">
              <span>
                <Core says={each.what} />: {t.band} <b>
                  <Core says={each.band} />
                </b>
              </span>
              <input inputMode="decimal" value={text} onInput={(event) => (entered.value = { ...entered.value, [key]: event.currentTarget.value })} />
              <span role="status">{inside === undefined ? "" : inside ? `✓ ${t.inside}` : `✗ ${t.outside}`}</span>
            </label>
          );
        })}
      </div>
      {[test.put_back].flat().filter(Boolean).map((each) => (
        <p class="warn">
          <Core says={each} />
        </p>
      ))}
    </li>
  );
}

export function VisitSheet() {
  const t = w.value.visit;
  const [working, work] = useState(false);
  const [wrong, find] = useState<Finding[]>([]);
  const kept = open.value;
  const key = JSON.stringify([kept.id, kept.site.text, kept.set, kept.card?.text, system.value]);
  const made = sheets.value[key];
  const make = async () => {
    work(true);
    const answer = await askSlow("sheet", { draws: 32, html: "sheet.html" });
    work(false);
    if (answer.exit_code > 1) {
      find(findingsOf(answer));
      return;
    }
    find([]);
    sheets.value = { [key]: { sheet: JSON.parse(answer.out) as Sheet, html: answer.files.find((file) => file.name === "sheet.html")?.text ?? "" } };
  };
  return (
    <section class="visitsheet" aria-labelledby="sheet-name">
      <h2 id="sheet-name">{t.sheet}</h2>
      <div class="row">
        <button type="button" class="strong" disabled={working} onClick={() => void make()}>
          {working ? "…" : t.makeSheet}
        </button>
        {made?.html && (
          <button type="button" onClick={() => save("sheet.html", made.html, "text/html")}>
            ⤓ sheet.html
          </button>
        )}
      </div>
      {working && (
        <p class="note" role="status">
          {t.making}
        </p>
      )}
      <FindingList findings={wrong} />
      {made && (
        <>
          <p>
            <Core says={made.sheet.says} />
          </p>
          <InEnglish />
          <Ticks name="safety" lines={made.sheet.safety} />
          <Ticks name="before" lines={made.sheet.before_power.lines} />
          <Entries sheet={made.sheet} />
          <ol>
            {made.sheet.tests.map((test) => (
              <Test key={test.test} test={test} />
            ))}
          </ol>
        </>
      )}
    </section>
  );
}
