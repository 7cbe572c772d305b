// What is told besides the stops: what is noticed, what the display shows, what changed. It goes to the core, and into
// the file that the terminal reads, as the lines of a history.
import { shownIn, type System } from "./units";

export const symptoms = [
  "no_pressure", "no_water", "never_sleeps", "cycles", "hunts", "high_pressure", "hot", "noisy", "air", "sand", "wet_ground",
] as const;
export type Symptom = (typeof symptoms)[number];

/// By the words that the core knows a change by (src/explain/changed.cc).
export const changes = [
  "a new lawn", "more people", "a new filter", "a plumber was here", "an electrician was here", "new settings", "a new cable or splice",
  "digging", "a storm", "lightning", "a generator", "frost", "heat", "a drought", "blasting nearby", "a float switch",
] as const;

export const displayFields = ["pressure", "speed", "current", "volts", "heat"] as const;
export type DisplayField = (typeof displayFields)[number];

export interface Told {
  noticed: Partial<Record<Symptom, { seen: boolean; value?: string }>>;
  changed: string[];
  changedOtherwise: string;
  display: Partial<Record<DisplayField, string>>;
  taps: "" | "open" | "shut";
  priors: Record<string, string>; // by cause, in percent
}

export const nothingTold: Told = { noticed: {}, changed: [], changedOtherwise: "", display: {}, taps: "", priors: {} };

export function displayUnit(field: DisplayField, system: System): string {
  if (field === "volts") return "V";
  return shownIn(field === "heat" ? "temperature" : field, system).unit;
}

/// A figure with the unit that is shown where none was typed.
export function figure(text: string, unit: string): string {
  const plain = text.trim().replace(/^(-?\d+),(\d+)/, "$1.$2");
  return /^-?[\d.]+$/.test(plain) ? `${plain} ${unit}` : plain;
}

const oneLine = (text: string) => text.replace(/[\r\n]+/g, " ").trim();

function symptomLine(key: Symptom, told: { seen: boolean; value?: string }, system: System): string {
  if (!told.seen) return `symptom: not ${key}`;
  const value = oneLine(told.value ?? "").replace(/[,;]/g, ".");
  if (value && key === "cycles") return `symptom: cycles every ${figure(value, "s")}`;
  if (value && key === "hunts") return `symptom: hunts by ${figure(value, shownIn("pressure", system).unit)}`;
  return `symptom: ${key}`;
}

/// The whole history as a file: the stops as they were typed, then the rest, so that lines keep their numbers.
export function historyText(stops: string, told: Told, system: System): string {
  const lines: string[] = [];
  for (const key of symptoms) {
    const one = told.noticed[key];
    if (one) lines.push(symptomLine(key, one, system));
  }
  for (const each of [...told.changed, oneLine(told.changedOtherwise)]) if (each) lines.push(`changed: ${each}`);
  const shown = displayFields.filter((each) => told.display[each]?.trim()).map((each) => figure(oneLine(told.display[each]!).replace(/;/g, " "), displayUnit(each, system)));
  if (shown.length) lines.push(`display: ${[...shown, ...(told.taps ? [`tap ${told.taps}`] : [])].join("; ")}`);
  if (!lines.length) return stops;
  return `${stops}${stops && !stops.endsWith("\n") ? "\n" : ""}${lines.join("\n")}\n`;
}

/// The shares that were changed, as the core takes them.
export function priorOptions(told: Told): string[] {
  return Object.entries(told.priors)
    .filter(([, text]) => text.trim())
    .map(([key, text]) => {
      const percent = Number(text.trim().replace(",", ".").replace(/\s*%$/, ""));
      return `${key}=${Number.isFinite(percent) ? percent / 100 : text.trim()}`;
    });
}
