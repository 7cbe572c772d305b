// A figure that was read, against the band in which the sheet expects it.
import { inUnit, type Kind } from "./units";

export interface BandReading {
  key: string;
  what: string;
  meter: string;
  unit: string;
  least: number | null;
  middle: number | null;
  most: number | null;
  band: string;
}

/// What is shown for an SI unit of the core.
export const kinds: Record<string, Kind> = { Pa: "pressure", Hz: "speed", A: "current", W: "power", "m3/s": "flow", m: "length", s: "time", m3: "volume", "°C": "temperature" };

/// Whether a figure lies in its band; nothing where none was entered or its unit is not shown as a number.
export function insideBand(text: string, reading: BandReading, units: "us" | "metric"): boolean | undefined {
  const value = Number(text.trim().replace(",", "."));
  const kind = kinds[reading.unit];
  if (!text.trim() || !Number.isFinite(value)) return undefined;
  const shown = (si: number) => (kind ? inUnit(si, kind, units) : si);
  return (reading.least === null || value >= shown(reading.least)) && (reading.most === null || value <= shown(reading.most));
}
