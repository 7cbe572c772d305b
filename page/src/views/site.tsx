// Entering a site: in steps, each quantity as people know it, with what is assumed where nothing is said.
import { signal } from "@preact/signals";
import { useEffect, useState } from "preact/hooks";
import { type Finding, findingsOf } from "../core/protocol";
import { type Checked, formSteps, ofStep, type Quantity } from "../state/form";
import { type Entry, entryOf, textOf, type Way } from "../state/range_text";
import { valueIn, withRun, withValue } from "../state/site_text";
import { ask, change, open, system, w } from "../state/store";
import { Core, FindingList } from "./parts";
import { Term } from "./term";

const checked = signal<Checked | undefined>(undefined);
const wrong = signal<Finding[]>([]);
export const step = signal(0);

async function check(): Promise<void> {
  const answer = await ask("check");
  wrong.value = answer.exit_code === 0 ? [] : findingsOf(answer);
  if (answer.exit_code === 0) checked.value = JSON.parse(answer.out) as Checked;
}

function put(key: string, value: string) {
  const site = open.value.site;
  const text = withValue(site.text, key, value);
  if (text !== site.text) change({ site: { ...site, text } });
}

function Field({ of }: { of: Quantity }) {
  const t = w.value.site;
  const written = valueIn(open.value.site.text, of.key);
  const [entry, edit] = useState<Entry>(() => entryOf(written, of.unit));
  useEffect(() => edit(entryOf(written, of.unit)), [written, of.unit]);
  const set = (by: Partial<Entry>) => {
    const next = { ...entry, unit: entry.unit || of.unit, ...by };
    edit(next);
    return next;
  };
  const store = (next: Entry) => {
    const text = textOf(next);
    if (text || next.way === "unknown") put(of.key, text);
  };
  const name = w.value.fieldNames[of.key] ?? of.meaning;
  const id = of.key.replaceAll(".", "-");
  const box = (part: "a" | "b" | "c", label: string) => (
    <label class="box">
      <span>{label}</span>
      <input inputMode="decimal" value={entry[part]} onInput={(event) => set({ [part]: event.currentTarget.value })} onBlur={(event) => store(set({ [part]: event.currentTarget.value }))} />
    </label>
  );
  return (
    <fieldset class={of.given ? "field" : "field assumed"} data-key={of.key}>
      <legend>
        {w.value.fieldNames[of.key] ? name : <Core says={name} />} <code class="key">{of.key}</code>
      </legend>
      <div class="boxes">
        <label class="box way">
          <span class="unseen">{name}</span>
          <select id={id} value={entry.way} onChange={(event) => store(set({ way: event.currentTarget.value as Way }))}>
            {(["exactly", "about", "between", "likely", "unknown"] as Way[]).map((way) => (
              <option value={way}>{t.ways[way]}</option>
            ))}
          </select>
        </label>
        {entry.way === "exactly" && box("a", t.value)}
        {entry.way === "about" && [box("a", t.value), box("b", t.giveOrTake)]}
        {entry.way === "between" && [box("a", t.low), box("b", t.high)]}
        {entry.way === "likely" && [box("a", t.low), box("c", t.mode), box("b", t.high)]}
        {entry.way !== "unknown" && (
          <label class="box unit">
            <span>{t.unit}</span>
            <input value={entry.unit} onInput={(event) => set({ unit: event.currentTarget.value })} onBlur={(event) => store(set({ unit: event.currentTarget.value }))} />
          </label>
        )}
      </div>
      {!of.given && (
        <p class="note">
          ◌ {t.assumed}: <b>{of.text}</b> {of.because && <Core says={of.because} />}
        </p>
      )}
      <p class="note">
        {t.limits} {of.least} {t.to} {of.most}
      </p>
    </fieldset>
  );
}

function Pipes() {
  const t = w.value.site;
  const site = open.value.site;
  const count = (site.text.match(/^\s*\[\[\s*pipe\s*\]\]/gm) ?? []).length;
  return (
    <div class="row">
      {Array.from({ length: count }, (_, i) => (
        <span class="tag">
          {i + 1}: {t.places[valueIn(site.text, `pipe.${i + 1}.place`)] ?? "?"} {valueIn(site.text, `pipe.${i + 1}.size`)}
        </span>
      ))}
      <button type="button" onClick={() => change({ site: { ...site, text: withRun(site.text, "pipe", { place: "yard", kind: "sch40_pvc", size: "1 in", length: "50 ft" }) } })}>
        + {t.addPipe}
      </button>
    </div>
  );
}

function TheFile() {
  const t = w.value.site;
  const site = open.value.site;
  const [draft, type] = useState(site.text);
  useEffect(() => type(site.text), [site.text]);
  return (
    <details class="thefile">
      <summary>{t.file}</summary>
      <p class="note">{t.fileHelp}</p>
      <textarea aria-label={t.file} spellcheck={false} rows={24} value={draft} onInput={(event) => type(event.currentTarget.value)} />
      <button type="button" class="strong" disabled={draft === site.text} onClick={() => change({ site: { ...site, text: draft } })}>
        {t.apply}
      </button>
    </details>
  );
}

export function SiteView() {
  const t = w.value.site;
  const site = open.value.site;
  const units = system.value;
  useEffect(() => void check(), [site.text, open.value.id, units]);
  const all = checked.value?.quantities ?? [];
  const at = formSteps[step.value]!;
  const { first, rest } = ofStep(at, all);
  const known = first.filter((each) => each.given).length;
  return (
    <>
      <section class="lead">
        <h2>
          {t.title} <Term of="range" />
        </h2>
        <p>{t.lead}</p>
        <label class="box name">
          <span>{t.name}</span>
          <input value={valueIn(site.text, "site.name")} onChange={(event) => put("site.name", event.currentTarget.value)} />
        </label>
      </section>
      <FindingList findings={wrong.value} />
      {!wrong.value.length && <p class="note">✓ {t.checked}</p>}
      <nav class="steps" aria-label={t.title}>
        {t.steps.map((name, i) => (
          <button type="button" aria-current={i === step.value ? "step" : undefined} onClick={() => (step.value = i)}>
            <b>{i + 1}</b> {name}
          </button>
        ))}
      </nav>
      <section class="form" aria-label={t.steps[step.value]}>
        <h2>
          {t.step} {step.value + 1}: {t.steps[step.value]} <span class="note">({known}/{first.length} {t.known})</span>
        </h2>
        {step.value === 2 && <Pipes />}
        {step.value === 3 && (
          <button type="button" onClick={() => change({ site: { ...site, text: withRun(site.text, "zone", { name: `${w.value.well.zone}`, flow: "4 gpm", pressure: "35 psi", time: "20 min" }) } })}>
            + {t.addZone}
          </button>
        )}
        {first.map((each) => (
          <Field key={each.key} of={each} />
        ))}
        {rest.length > 0 && (
          <details>
            <summary>
              {t.more} ({rest.length})
            </summary>
            {rest.map((each) => (
              <Field key={each.key} of={each} />
            ))}
          </details>
        )}
        <div class="row">
          <button type="button" disabled={step.value === 0} onClick={() => --step.value}>
            ← {t.previous}
          </button>
          <button type="button" class="strong" disabled={step.value === formSteps.length - 1} onClick={() => ++step.value}>
            {t.next} →
          </button>
        </div>
      </section>
      <TheFile />
    </>
  );
}
