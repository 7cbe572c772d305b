// The regulator's state in words: "resting: dry, 41 min left".
import type { LiveWords } from "../state/live";
import { span } from "../state/units";
import type { Words } from "../words/words";

export function saidOf(words: LiveWords, t: Words): { main: string; more: string[] } {
  const cause = words.cause ? (t.causes[words.cause] ?? words.cause) : "";
  let main = t.modes[words.mode] ?? words.mode;
  if (["resting", "stopped", "waiting"].includes(words.mode) && cause) main += `: ${cause}`;
  if (words.rest_left_s > 0) main += t.left.rest === "left" ? `, ${span(words.rest_left_s)} ${t.left.rest}` : `, ${t.left.rest} ${span(words.rest_left_s)}`;
  const more: string[] = [];
  if (words.sleep_left_s > 0 && words.mode === "holding") more.push(`${span(words.sleep_left_s)} ${t.left.sleep}`);
  if (words.dry_left_s > 0) more.push(`${span(words.dry_left_s)} ${t.left.dry}`);
  if (words.closed_left_s > 0) more.push(`${span(words.closed_left_s)} ${t.left.closed}`);
  if (words.long_run_left_s > 0 && words.long_run_left_s < 1800) more.push(`${span(words.long_run_left_s)} ${t.left.long}`);
  if (words.tries > 0) more.push(`${words.tries} ${t.left.tries}`);
  return { main, more };
}
