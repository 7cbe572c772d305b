// The well and what goes on in it.
import { Controls, Pace, Said } from "../live/controls";
import { CurrentMap } from "../live/map";
import { Section } from "../live/section";
import { Traces } from "../live/traces";
import { events } from "../state/live";
import { w } from "../state/store";
import { clock } from "../state/units";

export function WellStage() {
  const t = w.value.well;
  return (
    <div class="stage">
      <h2 class="unseen">{t.title}</h2>
      <Said />
      <Pace />
      <Section />
      <p class="note">{t.scale}</p>
    </div>
  );
}

export function Happened() {
  const t = w.value;
  const list = events.value;
  return (
    <section class="happened" aria-labelledby="happened-name">
      <h2 id="happened-name">{t.well.events}</h2>
      {list.length === 0 && <p class="note">{t.well.nothingYet}</p>}
      <ol>
        {[...list].reverse().slice(0, 12).map((each) => (
          <li class={each.kind === 3 ? "bad" : ""}>
            <time>{clock(each.t)}</time> {each.kind === 3 ? "■ " : ""}
            {t.events[each.kind]}
            {each.kind === 7 ? ` ${t.modes[each.mode] ?? each.mode}` : ""}
            {each.cause ? `: ${t.causes[each.cause] ?? each.cause}` : ""}
          </li>
        ))}
      </ol>
    </section>
  );
}

export function WellView() {
  return (
    <>
      <Controls />
      <Traces />
      <CurrentMap />
      <Happened />
    </>
  );
}
