// The page: the well always at hand, and beside it what is asked for.
import { effect } from "@preact/signals";
import { findings, language, look, open, planAnew, system, view, w } from "./state/store";
import { ExercisesView } from "./views/exercises";
import { Header, Tabs } from "./views/header";
import { HistoryView } from "./views/history";
import { FindingList } from "./views/parts";
import { ProofStrip } from "./views/proof";
import { SettingsView } from "./views/settings";
import { SiteView } from "./views/site";
import { TermDialog } from "./views/term";
import { VisitView } from "./views/visit";
import { WellStage, WellView } from "./views/well";

export function App() {
  const shown = view.value;
  return (
    <>
      <Header />
      <Tabs />
      <main id="content" class={`view-${shown}`} tabIndex={-1}>
        <WellStage />
        <div class="panel" key={open.value.id}>
          {shown === "well" && (
            <>
              <FindingList findings={findings.value} />
              <WellView />
              <ProofStrip />
            </>
          )}
          {shown === "settings" && <SettingsView />}
          {shown === "site" && <SiteView />}
          {shown === "visit" && <VisitView />}
          {shown === "history" && <HistoryView />}
          {shown === "exercises" && <ExercisesView />}
          <footer>
            <p class="note">{w.value.about}</p>
          </footer>
        </div>
      </main>
      <TermDialog />
    </>
  );
}

/// Settings and proof follow the open site, what is given by hand, and the units their texts are in.
export function startPlanning() {
  let before = "";
  let timer: ReturnType<typeof setTimeout> | undefined;
  effect(() => {
    const { id, site, set, card } = open.value;
    const now = JSON.stringify([id, site, set, card, system.value]);
    if (now === before) return;
    const waits = before === "" ? 0 : 120;
    before = now;
    clearTimeout(timer);
    timer = setTimeout(() => void planAnew(), waits);
  });
  effect(() => {
    document.documentElement.lang = language.value;
    document.documentElement.classList.toggle("sun", look.value.sun);
    document.documentElement.classList.toggle("big", look.value.big);
  });
}
