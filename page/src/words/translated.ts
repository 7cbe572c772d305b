// What the core says, in another language. The core speaks English, in sentences of a fixed form with figures in them:
// each form stands beside its translation, {} for what varies. A text is translated sentence by sentence, and what varies
// in turn, if it is not a figure. Where one form is lacking the whole text stays English, rather than half of each.
export type Forms = readonly (readonly [english: string, other: string])[];

// Figures, units and keys are the same in both: "57.5 Hz", "3 1/2 in", "closed.amps_below", "−0.32"; and
// what stands between quotes.
const units =
  "psi|bar|kPa|Pa|gpm|gpd|L|gal|ft|in|m|mm|cm|Hz|rpm|s|ms|min|h|d|A|V|kV|W|kW|kVA|hp|°F|°C|K|AWG|x|×|%|ohm|ft2|m2|m3|ppm|mA";
const figure = new RegExp(`^(?:[−+±<>≈~-]?[\\d.,:/]+(?:e[-−+]?\\d+)?|(?:${units})(?:[/²³·](?:${units}|\\d)+)*\\d?|±|\\.\\.|–|-|[a-z_]+(?:\\.[\\w]+)+)$`);

export function isFigure(text: string): boolean {
  if (/^"[^"]*"$/.test(text)) return true; // somebody's own words
  return text.trim() !== "" && text.trim().replace(/[()]/g, "").split(/\s+/).every((part) => figure.test(part.replace(/[,;:.]$/, "")));
}

interface Prepared {
  literals: string[]; // around what varies
  other: string;
}

function filled(other: string, parts: string[]): string {
  let next = 0;
  return other.replace(/\{(\d?)\}/g, (_, place: string) => parts[place === "" ? next++ : Number(place)]!);
}

/// @returns a translator of texts: nothing where a form is lacking
export function translator(forms: Forms): (text: string) => string | undefined {
  const prepared: Prepared[] = [...forms]
    .sort((a, b) => b[0].replaceAll("{}", "").length - a[0].replaceAll("{}", "").length) // the most particular first
    .map(([english, other]) => ({ literals: english.split("{}"), other }));
  const known = new Map<string, string | undefined>();

  const part = (text: string): string | undefined => (isFigure(text) ? text : whole(text));
  const whole = (text: string): string | undefined => {
    if (!known.has(text)) {
      known.set(text, undefined); // what would ask for itself is not found
      known.set(text, search(text));
    }
    return known.get(text);
  };
  const search = (text: string): string | undefined => {
    for (const form of prepared) {
      const said = text.startsWith(form.literals[0]!) ? fit(form, text, form.literals[0]!.length, []) : undefined;
      if (said !== undefined) return said;
    }
    return undefined;
  };
  /// From a place behind a literal on: what varies next, up to each place where the next literal stands.
  const fit = (form: Prepared, text: string, from: number, parts: string[]): string | undefined => {
    const last = parts.length === form.literals.length - 1;
    if (last) {
      const rest = text.slice(from);
      if (rest === "") return filled(form.other, parts);
      if (!/^\s/.test(rest)) return undefined;
      const after = whole(rest.trimStart());
      return after === undefined ? undefined : `${filled(form.other, parts)} ${after}`;
    }
    const literal = form.literals[parts.length + 1]!;
    const ends = literal === "" && parts.length + 2 === form.literals.length; // a phrase goes to the end
    for (let to = ends ? text.length : text.indexOf(literal, from + 1); to > from; to = ends ? -1 : text.indexOf(literal, to + 1)) {
      const varies = text.slice(from, to);
      if (/[.!?] +[A-Z]/.test(varies)) break; // it ends before the next sentence
      const said = part(varies);
      const all = said === undefined ? undefined : fit(form, text, to + literal.length, [...parts, said]);
      if (all !== undefined) return all;
    }
    return undefined;
  };
  return (text) => {
    if (known.size > 5000) known.clear();
    return text.trim() === "" ? text : part(text.trim());
  };
}
