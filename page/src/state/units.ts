// SI to what a person reads, in customary or metric units. What a person writes is read by the core.
export type System = "us" | "metric";
export type Kind =
  | "pressure" | "length" | "flow" | "speed" | "current" | "power" | "volume" | "time" | "temperature" | "ramp" | "gain" | "share" | "none";

interface Shown {
  unit: string;
  factor: number; // SI for one of it
  offset?: number;
  digits: number;
}

const us: Record<Kind, Shown> = {
  pressure: { unit: "psi", factor: 6894.757293168361, digits: 1 },
  length: { unit: "ft", factor: 0.3048, digits: 1 },
  flow: { unit: "gpm", factor: 6.30901964e-5, digits: 2 },
  speed: { unit: "Hz", factor: 1, digits: 1 },
  current: { unit: "A", factor: 1, digits: 2 },
  power: { unit: "W", factor: 1, digits: 0 },
  volume: { unit: "gal", factor: 0.003785411784, digits: 1 },
  time: { unit: "s", factor: 1, digits: 1 },
  temperature: { unit: "°F", factor: 5 / 9, offset: 255.37222222222223 - 273.15, digits: 0 },
  ramp: { unit: "Hz/s", factor: 1, digits: 2 },
  gain: { unit: "Hz/psi", factor: 1 / 6894.757293168361, digits: 3 },
  share: { unit: "%", factor: 0.01, digits: 0 },
  none: { unit: "", factor: 1, digits: 2 },
};

const metric: Record<Kind, Shown> = {
  ...us,
  pressure: { unit: "kPa", factor: 1000, digits: 0 },
  length: { unit: "m", factor: 1, digits: 1 },
  flow: { unit: "L/min", factor: 1 / 60000, digits: 1 },
  volume: { unit: "L", factor: 0.001, digits: 0 },
  temperature: { unit: "°C", factor: 1, digits: 0 },
  gain: { unit: "Hz/kPa", factor: 0.001, digits: 4 },
};

export function shownIn(kind: Kind, system: System): Shown {
  return (system === "us" ? us : metric)[kind];
}

export function inUnit(value: number, kind: Kind, system: System): number {
  const { factor, offset = 0 } = shownIn(kind, system);
  return (value - offset) / factor;
}

export function toSi(value: number, kind: Kind, system: System): number {
  const { factor, offset = 0 } = shownIn(kind, system);
  return value * factor + offset;
}

/// "51.3 psi"; a dash where there is no number.
export function text(value: number | null | undefined, kind: Kind, system: System, digits?: number): string {
  if (value === null || value === undefined || !Number.isFinite(value)) return "–";
  const shown = shownIn(kind, system);
  const number = inUnit(value, kind, system).toFixed(digits ?? shown.digits).replace(/^-(0(?:\.0+)?)$/, "$1");
  return shown.unit ? `${number} ${shown.unit}` : number;
}

/// A span of time as one says it: "41 min", "2 h 5 min", "12 s".
export function span(time_s: number): string {
  const whole = Math.max(0, Math.round(time_s));
  if (whole < 90) return `${whole} s`;
  const minutes = Math.round(whole / 60);
  if (minutes < 90) return `${minutes} min`;
  const hours = Math.floor(minutes / 60);
  return minutes % 60 ? `${hours} h ${minutes % 60} min` : `${hours} h`;
}

/// A moment of a run: "1:02:33".
export function clock(time_s: number): string {
  const whole = Math.max(0, Math.floor(time_s));
  const two = (n: number) => String(n).padStart(2, "0");
  return `${Math.floor(whole / 3600)}:${two(Math.floor(whole / 60) % 60)}:${two(whole % 60)}`;
}
