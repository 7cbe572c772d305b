// A quantity as people know it: exactly, about, between, most likely, or not at all. Written as a site file holds it.
export type Way = "exactly" | "about" | "between" | "likely" | "unknown";

export interface Entry {
  way: Way;
  a: string; // the value, the low end
  b: string; // ± so much, the high end
  c: string; // the likeliest
  unit: string;
}

const number = String.raw`[+-]?(?:\d+-\d+/\d+|\d+/\d+|\d+(?:[.,]\d+)?)(?:e[+-]?\d+)?`;

/// Reads what the file holds; a text of any other shape is kept as it is under "exactly".
export function entryOf(text: string, unit: string): Entry {
  const plain = text.trim();
  if (!plain) return { way: "unknown", a: "", b: "", c: "", unit };
  const tail = String.raw`\s*([^\d\s.,].*)?$`;
  const likely = new RegExp(`^(${number})\\s*\\.\\.\\s*(${number})\\s*\\.\\.\\s*(${number})${tail}`).exec(plain);
  if (likely) return { way: "likely", a: likely[1]!, c: likely[2]!, b: likely[3]!, unit: likely[4]?.trim() ?? "" };
  const between = new RegExp(`^(${number})\\s*(?:\\.\\.|to)\\s*(${number})${tail}`).exec(plain);
  if (between) return { way: "between", a: between[1]!, b: between[2]!, c: "", unit: between[3]?.trim() ?? "" };
  const about = new RegExp(`^(${number})\\s*(?:±|\\+/-)\\s*(${number})${tail}`).exec(plain);
  if (about) return { way: "about", a: about[1]!, b: about[2]!, c: "", unit: about[3]?.trim() ?? "" };
  const exact = new RegExp(`^(${number})${tail}`).exec(plain);
  if (exact) return { way: "exactly", a: exact[1]!, b: "", c: "", unit: exact[2]?.trim() ?? "" };
  return { way: "exactly", a: plain, b: "", c: "", unit: "" };
}

/// As it stands in a file; empty where it is not known or not all of it is there.
export function textOf({ way, a, b, c, unit }: Entry): string {
  const end = unit ? ` ${unit}` : "";
  const [low, high, mode] = [a.trim(), b.trim(), c.trim()];
  switch (way) {
    case "unknown":
      return "";
    case "exactly":
      return low ? low + end : "";
    case "about":
      return low && high ? `${low} ± ${high}${end}` : low ? low + end : "";
    case "between":
      return low && high ? `${low} .. ${high}${end}` : "";
    case "likely":
      return low && high && mode ? `${low} .. ${mode} .. ${high}${end}` : "";
  }
}
