// The book of the program that serves this page; absent where the page is opened without it.
import { signal } from "@preact/signals";
import type { Answer } from "../core/protocol";

export const bookThere = signal(false);

/// Whether there is one: the server says so to its own page.
export function lookForBook() {
  bookThere.value = document.querySelector('meta[name="wellproof-book"]') !== null;
}

export async function askBook(request: Record<string, unknown>): Promise<Answer> {
  try {
    const got = await fetch("./book/", { method: "POST", headers: { "content-type": "application/json", "x-wellproof": "page" }, body: JSON.stringify(request) });
    if (!got.ok) return { exit_code: 3, out: "", err: await got.text(), files: [] };
    return (await got.json()) as Answer;
  } catch (error) {
    return { exit_code: 3, out: "", err: String(error), files: [] };
  }
}
