// Pieces that several views share.
import type { ComponentChildren } from "preact";
import type { Finding } from "../core/protocol";
import { w } from "../state/store";

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

/// Words of the core, which speaks English.
export function Core({ children }: { children: ComponentChildren }) {
  return <span lang="en">{children}</span>;
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
