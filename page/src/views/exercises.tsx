// Exercises: a story, something to find, and a check that simulates the answer.
import { signal } from "@preact/signals";
import { useState } from "preact/hooks";
import { type Exercise, type ExerciseName, exercises, failsOf, type Fails, hiddenAct, isTheNight, nightCauses, nightWith } from "../state/exercises";
import { act, type LiveEvent, told } from "../state/live";
import { change, open, openId, sites, takeIn, view, w } from "../state/store";
import { clock } from "../state/units";
import { titleOf } from "./parts";

interface Begun {
  name: ExerciseName;
  site: string;
}
export const begun = signal<Begun | undefined>(undefined);

type Outcome = { right: boolean; fails?: Fails[]; events?: LiveEvent[] };

function begin(exercise: Exercise) {
  const had = sites.value.find((each) => !each.demo && each.site.file === exercise.site.file);
  const kept = had ?? takeIn(exercise.site);
  openId.value = kept.id;
  change({ site: exercise.site, set: exercise.set });
  begun.value = { name: exercise.name, site: kept.id };
  if (exercise.name === "night") {
    const stop = told.subscribe((now) => {
      if (now && now.scene && open.value.id === kept.id && now.now.t < 1) {
        queueMicrotask(() => {
          stop();
          act(hiddenAct);
        });
      }
    });
  }
}

function Running({ exercise }: { exercise: Exercise }) {
  const t = w.value.exercises;
  const words = t.list[exercise.name];
  const [hint, showHint] = useState(false);
  const [working, work] = useState(false);
  const [cause, choose] = useState("");
  const [outcome, tell] = useState<Outcome | undefined>(undefined);
  const check = async () => {
    work(true);
    tell(undefined);
    try {
      if (exercise.name === "night") {
        const events = await nightWith(cause, open.value);
        tell({ right: isTheNight(events), events });
      } else {
        const fails = await failsOf(exercise, open.value);
        tell({ right: fails.length === 0, fails });
      }
    } catch {
      tell({ right: false });
    }
    work(false);
  };
  return (
    <section class="exercise running" aria-labelledby="exercise-name">
      <h2 id="exercise-name">{words.title}</h2>
      <p class="story">
        {t.story}: {words.story}
      </p>
      <p>{words.task}</p>
      {exercise.name === "night" && (
        <fieldset class="causes">
          <legend>{t.cause}</legend>
          {Object.keys(nightCauses).map((each) => (
            <label>
              <input type="radio" name="cause" value={each} checked={cause === each} onChange={() => choose(each)} />
              {t.nightCauses[each as keyof typeof t.nightCauses]}
            </label>
          ))}
        </fieldset>
      )}
      <div class="row">
        <button type="button" class="strong" disabled={working || (exercise.name === "night" && !cause)} onClick={() => void check()}>
          {working ? `${t.checking} …` : t.check}
        </button>
        <button type="button" onClick={() => (view.value = exercise.goTo)}>
          {exercise.goTo === "well" ? t.toWell : t.toSettings}
        </button>
        <button type="button" aria-expanded={hint} onClick={() => showHint(!hint)}>
          {t.hint}
        </button>
        <button type="button" onClick={() => (begun.value = undefined)}>
          {t.leave}
        </button>
      </div>
      {hint && <p class="hint">{words.hint}</p>}
      <div role="status">
        {outcome && (
          <div class={outcome.right ? "outcome right" : "outcome"}>
            <p>
              <b>{outcome.right ? `✓ ${t.right}` : `✗ ${t.notYet}`}</b>
            </p>
            {outcome.fails && outcome.fails.length > 0 && (
              <ul>
                {outcome.fails.map((each) => (
                  <li>
                    {t.failsIn} „{titleOf(each.name)}“: {each.failed}/{each.runs} {t.ofDraws}
                  </li>
                ))}
              </ul>
            )}
            {outcome.events && (
              <>
                <p>{t.happens}:</p>
                <ol>
                  {outcome.events.slice(0, 6).map((each) => (
                    <li>
                      <time>{clock(each.t)}</time> {w.value.events[each.kind]}
                      {each.cause ? `: ${w.value.causes[each.cause] ?? each.cause}` : ""}
                    </li>
                  ))}
                </ol>
              </>
            )}
          </div>
        )}
      </div>
    </section>
  );
}

export function ExercisesView() {
  const t = w.value.exercises;
  const running = exercises.find((each) => each.name === begun.value?.name);
  return (
    <>
      <section class="lead">
        <h2>{t.title}</h2>
        <p>{t.lead}</p>
      </section>
      {running && <Running key={running.name} exercise={running} />}
      <div class="cards">
        {exercises
          .filter((each) => each !== running)
          .map((each) => (
            <section class="exercise" key={each.name}>
              <h3>{t.list[each.name].title}</h3>
              <p>{t.list[each.name].story}</p>
              <button type="button" class="strong" onClick={() => begin(each)}>
                {t.start}
              </button>
            </section>
          ))}
      </div>
    </>
  );
}
