// The card of the drive: chosen, brought or pasted; and what is entered in that drive, with what it lacks.
import { useRef, useState } from "preact/hooks";
import type { Finding } from "../core/protocol";
import { cardDemos, nameOfCard } from "../state/cards";
import { readAll } from "../state/files";
import type { PlanDrive, Setting } from "../state/plan";
import { cards, change, open, takeCard, w } from "../state/store";
import { Core, FindingList, titleOf } from "./parts";

export function CardChoice() {
  const t = w.value.card;
  const chosen = open.value.card;
  const picker = useRef<HTMLInputElement>(null);
  const [draft, type] = useState<string | undefined>(undefined);
  const [wrong, find] = useState<Finding[]>([]);
  const [said, say] = useState("");
  const at = cards.value.findIndex((each) => each.text === chosen?.text);
  const take = async (file: string, text: string) => {
    say("");
    find(await takeCard({ file, text }));
  };
  const choose = (value: string) => {
    type(undefined);
    find([]);
    const card = cards.value[Number(value)];
    if (value === "") change({ card: undefined });
    else if (card) void take(card.file, card.text);
  };
  const bring = async (list: FileList | null) => {
    if (!list?.length) return;
    try {
      const { files, tooLarge } = await readAll(list);
      if (tooLarge.length) say(`${tooLarge.join(", ")}: ${w.value.menu.tooLarge}`);
      else if (files[0]) await take(files[0].name, files[0].text);
    } catch {
      say(w.value.menu.notRead);
    }
    picker.current!.value = "";
  };
  return (
    <section class="cardchoice" aria-labelledby="card-name">
      <h2 id="card-name">{t.title}</h2>
      <p>{t.lead}</p>
      <div class="row">
        <label class="box">
          <span>{t.drive}</span>
          <select id="card" value={at < 0 ? "" : String(at)} onChange={(event) => choose(event.currentTarget.value)}>
            <option value="">{t.none}</option>
            {cards.value.map((each, i) => (
              <option value={String(i)}>
                {nameOfCard(each)}
                {cardDemos.includes(each) ? ` (${w.value.menu.demo})` : ""}
              </option>
            ))}
          </select>
        </label>
        <button type="button" onClick={() => picker.current!.click()}>
          ⤒ {t.bring}
        </button>
        <input ref={picker} class="unseen" tabIndex={-1} type="file" accept=".toml,text/plain" aria-label={t.bring} onChange={(event) => void bring(event.currentTarget.files)} />
      </div>
      <p role="status">{said}</p>
      <FindingList findings={wrong} />
      <details>
        <summary>{t.write}</summary>
        <p class="note">{t.writeHelp}</p>
        <textarea aria-label={t.write} rows={12} spellcheck={false} value={draft ?? chosen?.text ?? ""} onInput={(event) => type(event.currentTarget.value)} />
        <button type="button" disabled={!draft?.trim()} onClick={() => void take(chosen && !cardDemos.some((each) => each.file === chosen.file) ? chosen.file : "my_drive.toml", draft!)}>
          {w.value.site.apply}
        </button>
      </details>
    </section>
  );
}

export function OnDrive({ drive, settings }: { drive: PlanDrive; settings: Record<string, Setting> }) {
  const t = w.value.card;
  return (
    <section class="ondrive" aria-labelledby="ondrive-name">
      <h2 id="ondrive-name">
        {t.on} {drive.name}
      </h2>
      <div class="scroll" tabIndex={0} role="region" aria-label={t.label}>
        <table>
          <thead>
            <tr>
              <th scope="col">{t.label}</th>
              <th scope="col">{t.value}</th>
              <th scope="col">{t.where}</th>
              <th scope="col">{t.rounded}</th>
            </tr>
          </thead>
          <tbody>
            {drive.entries.map((each) => (
              <tr>
                <th scope="row">{each.label}</th>
                <td class="value">
                  {settings[each.key]?.feasible === false && "⚠ "}
                  {each.enter}
                </td>
                <td>{each.where}</td>
                <td class="note">
                  {w.value.settingNames[each.key] ?? each.key}
                  {each.clipped && ` · ${each.fixed ? t.fixed : t.clipped}`}
                  {each.rounded && (
                    <>
                      {" · "}
                      <Core says={each.rounded} />
                    </>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {drive.lacking.length > 0 && (
        <>
          <h3>{t.lacks}</h3>
          <ul class="plain lacks">
            {drive.lacking.map((each) => (
              <li>
                <b>{w.value.settingNames[each.key] ?? each.key}</b> <code class="key">{each.key}</code>: <Core says={each.unguarded} />
              </li>
            ))}
          </ul>
        </>
      )}
      {drive.lost_by_rounding.map((each) => (
        <p class="warn">
          ⚠ {t.lost} {each.of_plan ? (w.value.marginNames[each.name] ?? each.name) : titleOf(each.name)}: {each.derived.toFixed(2)} → {each.entered.toFixed(2)}
        </p>
      ))}
    </section>
  );
}
