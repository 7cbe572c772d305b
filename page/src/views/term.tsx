// A word with its explanation one tap away.
import { signal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { w } from "../state/store";

const shown = signal<string | undefined>(undefined);

/// A small button that explains a term of words/en.ts.
export function Term({ of }: { of: string }) {
  const term = w.value.terms[of];
  if (!term) return null;
  return (
    <button type="button" class="term" aria-label={`${term[0]}: ${w.value.term.what}`} onClick={() => (shown.value = of)}>
      ?
    </button>
  );
}

export function TermDialog() {
  const dialog = useRef<HTMLDialogElement>(null);
  const of = shown.value;
  useEffect(() => {
    if (of) dialog.current?.showModal();
  }, [of]);
  const term = of ? w.value.terms[of] : undefined;
  return (
    <dialog ref={dialog} class="explain" aria-labelledby="term-name" onClose={() => (shown.value = undefined)}>
      <h2 id="term-name">{term?.[0]}</h2>
      <p>{term?.[1]}</p>
      <form method="dialog">
        <button class="strong">{w.value.term.close}</button>
      </form>
    </dialog>
  );
}
