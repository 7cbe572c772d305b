// Stops on their days, for the chart: which row, where in the day, how long the rest.
export const dayLong_s = 86400;
export const mostDays = 14;

export interface StopTold {
  kind: string;
  age_s: number;
  time_of_day_s: number | null;
}

export interface StopMark {
  kind: string;
  back: number; // days before today
  at_s: number; // time of day
  rests: boolean; // the drive tries again by itself after a rest
}

export interface StopDays {
  days: number;
  kinds: string[];
  marks: StopMark[];
  older: number; // too many days ago to be drawn
  now_s: number; // time of day
  labels: string[]; // of each day, today first: "08-14"
}

/// @param now_s wall clock, seconds since 1970 as that clock shows; null: no clock was told
export function stopDays(stops: StopTold[], now_s: number | null): StopDays | undefined {
  const timed = stops.filter((each) => each.time_of_day_s !== null);
  if (now_s === null || !timed.length) return undefined;
  const midnight = Math.floor(now_s / dayLong_s) * dayLong_s;
  const marks = timed.map((each) => ({
    kind: each.kind,
    back: Math.max(0, Math.ceil((midnight - (now_s - each.age_s)) / dayLong_s)),
    at_s: each.time_of_day_s!,
    rests: each.kind === "dry_run" || each.kind === "closed_discharge",
  }));
  const kept = marks.filter((each) => each.back < mostDays);
  const days = 1 + Math.max(0, ...kept.map((each) => each.back));
  return {
    days,
    kinds: [...new Set(kept.map((each) => each.kind))],
    marks: kept,
    older: marks.length - kept.length,
    now_s: now_s - midnight,
    labels: Array.from({ length: days }, (_, back) => new Date((midnight - back * dayLong_s) * 1000).toISOString().slice(5, 10)),
  };
}
