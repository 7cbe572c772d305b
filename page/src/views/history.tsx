// A history of stops as people note it, and its causes: ranked, with what speaks for and against each, and what to look
// at next.
import { signal } from "@preact/signals";
import { useState } from "preact/hooks";
import { slow } from "../core/hand";
import { type Finding, findingsOf } from "../core/protocol";
import { readingsToml, rowsOf } from "../state/readings";
import type { StopTold } from "../state/stops_chart";
import { change, open, request, system, w } from "../state/store";
import { historyText, nothingTold, priorOptions } from "../state/told";
import { type Cause, CauseCard, Check, Priors, type Question } from "./causes";
import { ToldForm } from "./history_told";
import { Cautions, Core, FindingList, InEnglish, inWords, save } from "./parts";
import { StopsChart } from "./stops_chart";

interface Explained {
  told: string;
  now_s: number | null;
  rest_s: number;
  stops: StopTold[];
  says: string;
  notes: string[];
  settings_from: string;
  causes: Cause[];
  next: Question[];
  settings_say: string[];
  settings_tried: { helps: boolean }[];
  cautions: { key: string; says: string }[];
}

interface Answered {
  option: string; // "watch_gauge=low"
  title: string;
  seen: string;
}

interface Run {
  explained: Explained;
  now: string; // the clock it was explained by; the same for all answers, which are ranked over the same worlds
  answered: Answered[];
  report: string;
}

const example = `now: 2026-08-14 07:00
yesterday 9:40 pm: dry
yesterday 10:56 pm: dry
12:13 am: dry
1:29 am: dry
`;

/// What the device's clock says, for stops that are told as "yesterday".
function nowText(): string {
  const at = new Date();
  const two = (n: number) => String(n).padStart(2, "0");
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())} ${two(at.getHours())}:${two(at.getMinutes())}`;
}

const runs = signal<Record<string, Run>>({});
const leastShown = 0.02;
const mostShown = 6;
const mostChecks = 4;

export function HistoryView() {
  const t = w.value.history;
  const kept = open.value;
  const [progress, tell] = useState<[number, number] | undefined>(undefined);
  const [wrong, find] = useState<Finding[]>([]);
  const run = runs.value[kept.id];
  const result = run?.explained;
  const busy = progress !== undefined;
  const explain = async (answered: Answered[], now = nowText()) => {
    const mine = open.value;
    const told = mine.told ?? nothingTold;
    const text = historyText(mine.history, told, system.value);
    if (!text.trim()) {
      find([{ file: "", line: 0, column: 0, key: "", found: t.nothing, expected: "", nearest: "" }]);
      return;
    }
    tell([0, 1]);
    const readings = readingsToml(rowsOf(mine.readings), system.value);
    const parts: Record<string, unknown> = { history: { file: "stops.txt", text } };
    if (readings) parts.readings = { file: "readings.toml", text: readings };
    const options: Record<string, unknown> = { draws: 32, now, report: "why_it_stopped.html" };
    const prior = priorOptions(told);
    if (prior.length) options.prior = prior;
    if (answered.length) options.answers = answered.map((each) => each.option);
    const answer = await slow.ask({ ...request("explain", options, mine), ...parts }, (done, all) => tell([done, all]));
    tell(undefined);
    if (answer.exit_code > 1) {
      find(findingsOf(answer));
      return;
    }
    find([]);
    runs.value = { ...runs.value, [mine.id]: { explained: JSON.parse(answer.out) as Explained, now, answered, report: answer.files[0]?.text ?? "" } };
  };
  const again = (answered: Answered[]) => void explain(answered, run?.now);
  const shown = result?.causes.filter((each, i) => i < 2 || each.posterior >= leastShown).slice(0, mostShown) ?? [];
  return (
    <>
      <section class="lead">
        <h2>{t.title}</h2>
        <label for="stops">{t.lead}</label>
        <textarea id="stops" rows={8} spellcheck={false} value={kept.history} onInput={(event) => change({ history: event.currentTarget.value })} />
        <p class="note">{t.linesHelp}</p>
        <ToldForm />
        <div class="row">
          <button type="button" class="strong" disabled={busy} onClick={() => void explain([])}>
            {t.explain}
          </button>
          <button type="button" onClick={() => change({ history: example })}>
            {t.example}
          </button>
          <button type="button" disabled={!kept.history.trim()} onClick={() => save("stops.txt", historyText(kept.history, kept.told ?? nothingTold, system.value))}>
            ⤓ {t.saveStops}
          </button>
        </div>
        {progress && (
          <p class="progress" role="status">
            <progress max={progress[1]} value={progress[0]} aria-label={t.explaining} />
            <span>{t.explaining} …</span>
            <button type="button" class="small" onClick={() => slow.drop()}>
              {w.value.proof.stop}
            </button>
          </p>
        )}
      </section>
      <FindingList findings={wrong} />
      {run && result && (
        <>
          <section class="causes-found" aria-labelledby="causes-name">
            <h2 id="causes-name">{t.causes}</h2>
            <InEnglish />
            <p>
              <b>
                <Core says={result.says} />
              </b>
            </p>
            <p>
              <Core says={result.told} />
            </p>
            <StopsChart stops={result.stops} now_s={result.now_s} rest_s={result.rest_s} told={inWords(result.told)} />
            <p class="note">
              {t.settingsFrom}: <Core says={result.settings_from} />
            </p>
            {result.notes.map((each) => (
              <p class="note">
                <Core says={each} />
              </p>
            ))}
            <ol>
              {shown.map((each, i) => (
                <CauseCard key={each.key} cause={each} open={i < 2} />
              ))}
            </ol>
            <p class="note">{t.errorSays}</p>
            <Priors causes={result.causes} busy={busy} anew={() => again(run.answered)} />
          </section>
          <section aria-labelledby="next-name" class="nextcheck">
            <h2 id="next-name">{t.next}</h2>
            {run.answered.length > 0 && (
              <>
                <h3>{t.answeredSoFar}</h3>
                <ul class="plain">
                  {run.answered.map((each, i) => (
                    <li>
                      <Core says={each.title} />: <Core says={each.seen} />{" "}
                      <button type="button" class="small" disabled={busy} onClick={() => again(run.answered.filter((_, j) => j !== i))}>
                        {t.takeBack}
                      </button>
                    </li>
                  ))}
                </ul>
              </>
            )}
            {result.next.length === 0 && <p>{t.noCheck}</p>}
            <ol>
              {result.next.slice(0, mostChecks).map((each) => (
                <Check
                  key={each.key}
                  question={each}
                  causes={result.causes}
                  busy={busy}
                  answer={(value, seen) => again([...run.answered.filter((one) => !one.option.startsWith(`${each.key}=`)), { option: `${each.key}=${value}`, title: each.title, seen }])}
                />
              ))}
            </ol>
          </section>
          <section aria-labelledby="setting-name">
            <h2 id="setting-name">{t.setting}</h2>
            <ul class="plain">
              {result.settings_say.map((each) => (
                <li>
                  <Core says={each} />
                </li>
              ))}
            </ul>
          </section>
          <Cautions list={result.cautions} />
          {run.report && (
            <button type="button" onClick={() => save("why_it_stopped.html", run.report, "text/html")}>
              ⤓ {t.report}
            </button>
          )}
        </>
      )}
    </>
  );
}
