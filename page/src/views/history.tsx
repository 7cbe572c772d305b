// A history of stops as people note it, and its causes: ranked, with what speaks for and against each, and what to look
// at next.
import { signal } from "@preact/signals";
import { useState } from "preact/hooks";
import { slow } from "../core/hand";
import { type Finding, findingsOf } from "../core/protocol";
import { readingsToml, rowsOf } from "../state/readings";
import { change, open, request, system, w } from "../state/store";
import { Core, FindingList } from "./parts";

interface Cause {
  key: string;
  title: string;
  posterior: number;
  posterior_error: number;
  possible: boolean;
  severity: string;
  evidence: { for: boolean; says: string }[];
  todo: string;
}

interface Question {
  key: string;
  title: string;
  how: string;
  minutes: number;
  answers: { word: string; says: string; share: number; leader: string }[];
}

interface Explained {
  says: string;
  notes: string[];
  causes: Cause[];
  next: Question[];
  cautions: string[];
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

const results = signal<Record<string, Explained>>({});
const answered = signal<Record<string, string[]>>({});

function CauseCard({ cause }: { cause: Cause }) {
  const t = w.value.history;
  const speaks = (side: boolean) => cause.evidence.filter((each) => each.for === side);
  return (
    <li class="cause">
      <div class="head">
        <h3>
          <Core>{cause.title}</Core>
        </h3>
        <b>
          {(cause.posterior * 100).toFixed(0)} % <span class="note">± {(cause.posterior_error * 100).toFixed(0)}</span>
        </b>
      </div>
      <div class="share" role="img" aria-label={`${t.share} ${(cause.posterior * 100).toFixed(0)} %`}>
        <span style={{ width: `${Math.max(1, cause.posterior * 100)}%` }} />
      </div>
      {cause.severity && (
        <p class="note">
          <Core>{cause.severity}</Core>
        </p>
      )}
      {[true, false].map(
        (side) =>
          speaks(side).length > 0 && (
            <details open={side}>
              <summary>
                {side ? `+ ${t.for}` : `− ${t.against}`} ({speaks(side).length})
              </summary>
              <ul class="plain">
                {speaks(side).map((each) => (
                  <li>
                    <Core>{each.says}</Core>
                  </li>
                ))}
              </ul>
            </details>
          ),
      )}
      {cause.todo && (
        <p>
          <b>{t.todo}:</b> <Core>{cause.todo}</Core>
        </p>
      )}
    </li>
  );
}

export function HistoryView() {
  const t = w.value.history;
  const kept = open.value;
  const [progress, tell] = useState<[number, number] | undefined>(undefined);
  const [wrong, find] = useState<Finding[]>([]);
  const result = results.value[kept.id];
  const explain = async (answers: string[]) => {
    if (!kept.history.trim()) {
      find([{ file: "", line: 0, column: 0, key: "", found: t.nothing, expected: "", nearest: "" }]);
      return;
    }
    tell([0, 1]);
    const readings = readingsToml(rowsOf(kept.readings), system.value);
    const parts: Record<string, unknown> = { history: { file: "stops.txt", text: kept.history } };
    if (readings) parts.readings = { file: "readings.toml", text: readings };
    const options: Record<string, unknown> = { draws: 48, now: nowText() };
    if (answers.length) options.answers = answers;
    const answer = await slow.ask({ ...request("explain", options, kept), ...parts }, (done, all) => tell([done, all]));
    tell(undefined);
    if (answer.exit_code > 1) {
      find(findingsOf(answer));
      return;
    }
    find([]);
    answered.value = { ...answered.value, [kept.id]: answers };
    results.value = { ...results.value, [kept.id]: JSON.parse(answer.out) as Explained };
  };
  const sure = result?.causes.filter((each) => each.posterior >= 0.02).slice(0, 6) ?? [];
  return (
    <>
      <section class="lead">
        <h2>{t.title}</h2>
        <label for="stops">{t.lead}</label>
        <textarea id="stops" rows={8} spellcheck={false} value={kept.history} onInput={(event) => change({ history: event.currentTarget.value })} />
        <div class="row">
          <button type="button" class="strong" disabled={progress !== undefined} onClick={() => void explain([])}>
            {t.explain}
          </button>
          <button type="button" onClick={() => change({ history: example })}>
            {t.example}
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
      {result && (
        <>
          <section class="causes-found" aria-labelledby="causes-name">
            <h2 id="causes-name">{t.causes}</h2>
            <p>
              <b>
                <Core>{result.says}</Core>
              </b>
            </p>
            <ol>
              {sure.map((each) => (
                <CauseCard key={each.key} cause={each} />
              ))}
            </ol>
          </section>
          <section aria-labelledby="next-name">
            <h2 id="next-name">{t.next}</h2>
            <ol>
              {result.next.slice(0, 3).map((each) => (
                <li class="test" key={each.key}>
                  <h3>
                    <Core>{each.title}</Core>{" "}
                    <span class="note">
                      ({Math.round(each.minutes)} {w.value.proof.minutes})
                    </span>
                  </h3>
                  <p>
                    <Core>{each.how}</Core>
                  </p>
                  <div class="row">
                    {each.answers.map((one) => (
                      <button type="button" disabled={progress !== undefined} onClick={() => void explain([...(answered.value[kept.id] ?? []), `${each.key}=${one.word}`])}>
                        <Core>{one.says}</Core> ({Math.round(one.share * 100)} %)
                      </button>
                    ))}
                  </div>
                </li>
              ))}
            </ol>
            {result.cautions.map((each) => (
              <p class="warn">
                ⚠ <Core>{each}</Core>
              </p>
            ))}
          </section>
        </>
      )}
    </>
  );
}
