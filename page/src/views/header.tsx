// The head of the page: which site, how it is shown, files in and out.
import { useEffect, useRef, useState } from "preact/hooks";
import { askBook, bookThere } from "../state/book";
import { isCard } from "../state/cards";
import { readAll, siteOf } from "../state/files";
import { ask, findings, type Kept, language, letGo, look, open, openId, plan, sites, system, takeCard, takeIn, view, views, w } from "../state/store";
import { settingsToml } from "../state/settings_toml";
import { valueIn } from "../state/site_text";
import { type Language, words } from "../words/words";
import { save } from "./parts";

const titleOf = (kept: Kept) => valueIn(kept.site.text, "site.name") || kept.site.file;

function BookButton() {
  const t = w.value.menu;
  const [why, type] = useState("");
  const [said, say] = useState("");
  if (!bookThere.value) return null;
  const write = async () => {
    const { site } = open.value;
    const files = plan.value ? [{ kind: "settings", file: "settings.toml", text: settingsToml(plan.value.site.name, plan.value) }] : [];
    const answer = await askBook({ command: "add", site, files, why });
    say(answer.exit_code === 0 ? answer.out.trim() || t.keptInBook : answer.err.trim());
  };
  return (
    <div class="bookbox">
      <label class="box">
        <span>
          {t.book}: {t.why}
        </span>
        <input value={why} onInput={(event) => type(event.currentTarget.value)} />
      </label>
      <button type="button" disabled={!why.trim()} onClick={() => void write()}>
        {t.toBook}
      </button>
      <p role="status">{said}</p>
    </div>
  );
}

export function Header() {
  const t = w.value.menu;
  const menu = useRef<HTMLDetailsElement>(null);
  useEffect(() => {
    const close = (event: Event) => {
      const inside = event.target instanceof Node && menu.current?.contains(event.target);
      if (event instanceof KeyboardEvent ? event.key === "Escape" : !inside) menu.current?.removeAttribute("open");
    };
    addEventListener("pointerdown", close);
    addEventListener("keydown", close);
    return () => {
      removeEventListener("pointerdown", close);
      removeEventListener("keydown", close);
    };
  }, []);
  // What opens, saves or leaves has been chosen; what changes how it looks may be chosen again.
  const chosen = (event: MouseEvent) => {
    const button = event.target instanceof Element ? event.target.closest("button") : null;
    if (button && !button.hasAttribute("aria-pressed") && !button.closest(".bookbox")) menu.current?.removeAttribute("open");
  };
  const picker = useRef<HTMLInputElement>(null);
  const [said, say] = useState("");
  const take = async (list: FileList | null) => {
    if (!list?.length) return;
    try {
      const { files, tooLarge } = await readAll(list);
      const site = siteOf(files.filter((file) => !isCard(file.text)));
      if (site) takeIn(site);
      for (const { name, text } of files.filter((file) => isCard(file.text))) {
        const wrong = await takeCard({ file: name, text });
        view.value = "settings";
        if (wrong.length) findings.value = wrong;
      }
      say(tooLarge.length ? `${tooLarge.join(", ")}: ${t.tooLarge}` : "");
    } catch {
      say(t.notRead);
    }
    picker.current!.value = "";
  };
  const fresh = async () => {
    const answer = await ask("new", { starter: "my_site.toml", json: false });
    const made = answer.files[0];
    if (made) {
      takeIn({ file: made.name, text: made.text, beside: [] });
      view.value = "site";
    }
  };
  const kept = open.value;
  return (
    <header class="top">
      <a class="skip" href="#content">
        {w.value.skipLink}
      </a>
      <h1>wellproof</h1>
      <label class="box pick">
        <span class="unseen">{t.site}</span>
        <select value={openId.value} onChange={(event) => (openId.value = event.currentTarget.value)}>
          {sites.value.map((each) => (
            <option value={each.id}>
              {titleOf(each)}
              {each.demo ? ` (${t.demo})` : ""}
            </option>
          ))}
        </select>
      </label>
      <details class="menu" ref={menu}>
        <summary aria-label={t.site}>☰</summary>
        <div class="sheetmenu" onClick={chosen}>
          <button type="button" onClick={() => void fresh()}>
            + {t.fresh}
          </button>
          <button type="button" onClick={() => picker.current!.click()}>
            ⤒ {t.openFile}
          </button>
          <input ref={picker} class="unseen" tabIndex={-1} type="file" multiple accept=".toml,.csv,text/plain" aria-label={t.openFile} onChange={(event) => void take(event.currentTarget.files)} />
          <button type="button" onClick={() => save(kept.site.file || "site.toml", kept.site.text)}>
            ⤓ {t.save}
          </button>
          {!kept.demo && (
            <button type="button" onClick={() => confirm(t.sureRemove) && letGo(kept.id)}>
              {t.remove}
            </button>
          )}
          <button type="button" onClick={() => print()}>
            {t.print}
          </button>
          <label class="box">
            <span>{t.language}</span>
            <select value={language.value} onChange={(event) => (language.value = event.currentTarget.value as Language)}>
              {Object.entries(words).map(([key, each]) => (
                <option value={key}>{each.name}</option>
              ))}
            </select>
          </label>
          <label class="box">
            <span>{t.units}</span>
            <select value={system.value} onChange={(event) => (system.value = event.currentTarget.value as "us" | "metric")}>
              <option value="us">{t.us}</option>
              <option value="metric">{t.metric}</option>
            </select>
          </label>
          <button type="button" aria-pressed={look.value.sun} onClick={() => (look.value = { ...look.value, sun: !look.value.sun })}>
            ☀ {t.sun}
          </button>
          <button type="button" aria-pressed={look.value.big} onClick={() => (look.value = { ...look.value, big: !look.value.big })}>
            ⛶ {t.big}
          </button>
          <BookButton />
        </div>
      </details>
      <p class="saidbox" role="status">
        {said}
      </p>
    </header>
  );
}

const icons: Record<string, string> = { well: "◍", settings: "⇅", site: "✎", visit: "☑", history: "■", exercises: "△" };

export function Tabs() {
  return (
    <nav class="tabs" aria-label="wellproof">
      {views.map((each) => (
        <button type="button" aria-current={view.value === each ? "page" : undefined} onClick={() => (view.value = each)}>
          <span aria-hidden="true">{icons[each]}</span>
          {w.value.views[each]}
        </button>
      ))}
    </nav>
  );
}
