// Readings as rows of a form, and as the file that fit reads.
export const conditions = ["rest", "asleep", "shut", "least", "open", "flow"] as const;
export const instruments = ["gauge", "drive_pressure", "speed", "current", "volts", "flow", "level"] as const;
export type Instrument = (typeof instruments)[number];

export interface Row {
  condition: string;
  values: Partial<Record<Instrument, string>>;
}

const units: Record<Instrument, [us: string, metric: string]> = {
  gauge: ["psi", "kPa"],
  drive_pressure: ["psi", "kPa"],
  speed: ["Hz", "Hz"],
  current: ["A", "A"],
  volts: ["V", "V"],
  flow: ["gpm", "L/min"],
  level: ["ft", "m"],
};

export function unitOf(instrument: Instrument, system: "us" | "metric"): string {
  return units[instrument][system === "us" ? 0 : 1];
}

/// A figure without a unit gets the customary one.
export function withUnit(text: string, instrument: Instrument, system: "us" | "metric"): string {
  const plain = text.trim().replace(/^(\d+),(\d+)/, "$1.$2");
  return /^[\d.\s±+/-]+$/.test(plain) ? `${plain} ${unitOf(instrument, system)}` : plain;
}

export function readingsToml(rows: Row[], system: "us" | "metric"): string {
  return rows
    .map((row) => {
      const values = instruments.filter((each) => row.values[each]?.trim()).map((each) => `${each} = ${JSON.stringify(withUnit(row.values[each]!, each, system))}`);
      return values.length ? `[[reading]]\ncondition = ${JSON.stringify(row.condition)}\n${values.join("\n")}\n` : "";
    })
    .filter(Boolean)
    .join("\n");
}

export function rowsOf(text: string): Row[] {
  try {
    const rows: unknown = JSON.parse(text || "[]");
    return Array.isArray(rows) ? rows.filter((row): row is Row => typeof row?.condition === "string" && typeof row.values === "object" && row.values !== null) : [];
  } catch {
    return [];
  }
}
