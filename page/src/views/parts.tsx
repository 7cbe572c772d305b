// Pieces that several views share.
import type { Finding } from "../core/protocol";
import { language, w } from "../state/store";
import { ofCore } from "../words/words";

/// How far from the limit: 0 in the middle, failed to the left of it. Sign and words say the same as the colour.
export function MarginBar({ margin, label }: { margin: number; label: string }) {
  const held = Math.max(-1, Math.min(1, margin));
  const fails = margin < 0;
  return (
    <div class={fails ? "margin fails" : "margin"} role="img" aria-label={`${label} ${margin.toFixed(2)}`}>
      <span class="bar" style={{ left: `${fails ? 50 + 50 * held : 50}%`, width: `${Math.max(1.5, 50 * Math.abs(held))}%` }} />
      <span class="zero" />
      <span class="figure">
        {fails ? "✗" : "✓"} {margin > 0 ? "+" : ""}
        {margin.toFixed(2)}
      </span>
    </div>
  );
}

export function FindingList({ findings }: { findings: Finding[] }) {
  if (!findings.length) return null;
  const t = w.value.findings;
  return (
    <section class="findings" role="alert">
      <h2>✗ {t.title}</h2>
      <ul>
        {findings.map((each) => (
          <li>
            {each.line > 0 && (
              <b>
                {each.file && `${each.file}, `}
                {t.line} {each.line}:{each.column}{" "}
              </b>
            )}
            {each.key && <code>{each.key}</code>} <span lang="en">{each.found}</span>
            {each.expected && (
              <>
                ; {t.expected} <span lang="en">{each.expected}</span>
              </>
            )}
            {each.nearest && (
              <>
                ; {t.meant} <code>{each.nearest}</code>?
              </>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

/// Says, in another language than English, that what the core writes is English.
export function InEnglish() {
  return language.value === "en" ? null : <p class="note in-english">{w.value.coreEnglish}</p>;
}

/// Cautions in the language of the page. Where the core's sentence has no translation, its key has general words.
export function Cautions({ list }: { list: { key: string; says: string }[] }) {
  if (!list.length) return null;
  return (
    <section class="cautions" aria-labelledby="cautions-name">
      <h2 id="cautions-name">⚠ {w.value.proof.cautions}</h2>
      <ul class="plain">
        {list.map((each) => {
          const known = ofCore[language.value](each.says) ?? w.value.cautions[each.key];
          return (
            <li>
              {known ?? <Core says={each.says} />}
              {known === w.value.cautions[each.key] && /\d/.test(each.says) && (
                <p class="note">
                  {w.value.withFigures}: <Core says={each.says} />
                </p>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/// What the core says, in the language of the page as far as that has words for it.
export function Core({ says }: { says: string }) {
  const said = ofCore[language.value](says);
  return said === undefined ? <span lang="en">{says}</span> : <>{said}</>;
}

/// The same where no element can stand.
export function inWords(says: string): string {
  return ofCore[language.value](says) ?? says;
}

export function save(name: string, text: string, type = "text/plain") {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 1000);
}

/// Title of a scenario in the language of the page.
export function titleOf(name: string, english?: string): string {
  return w.value.scenarios[name] ?? english ?? name.replaceAll("_", " ").replace(/^./, (first) => first.toUpperCase());
}
