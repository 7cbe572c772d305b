// By how much a setting moves at one press, and how its value is written for the core.
import { inUnit, type Kind, shownIn, type System, toSi } from "./units";

interface Step {
  kind: Kind;
  us: number;
  metric: number;
}

const pressure = (us: number, metric: number): Step => ({ kind: "pressure", us, metric });
const plain = (kind: Kind, by: number): Step => ({ kind, us: by, metric: by });

export const steps: Record<string, Step> = {
  "pressure.target": pressure(1, 5),
  "pressure.wake_drop": pressure(1, 5),
  "pressure.stop_above": pressure(2, 10),
  "sensor.full_scale": pressure(5, 50),
  "sensor.trim": pressure(0.5, 5),
  "motor.current_limit": plain("current", 0.1),
  "speed.floor": plain("speed", 0.5),
  "speed.ceiling": plain("speed", 0.5),
  "speed.ramp_up": plain("ramp", 0.5),
  "speed.ramp_down": plain("ramp", 0.5),
  "regulator.gain": { kind: "gain", us: 0.05, metric: 0.01 },
  "regulator.reset_time": plain("time", 0.2),
  "sleep.speed_below": plain("speed", 0.2),
  "sleep.hold": plain("time", 1),
  "sleep.band": pressure(0.5, 5),
  "sleep.ramp": plain("ramp", 0.1),
  "dry_run.amps_below": plain("current", 0.05),
  "dry_run.power_below": plain("power", 10),
  "dry_run.delay": plain("time", 0.5),
  "dry_run.rest": plain("time", 60),
  "closed.amps_below": plain("current", 0.05),
  "closed.power_below": plain("power", 10),
  "closed.delay": plain("time", 0.5),
  "long_run.limit": plain("time", 600),
  "fill.time": plain("time", 10),
  "fill.speed": plain("speed", 1),
};

/// The value a press leads to, on the grid of steps, as text with its unit.
/// @param drive_step of the drive's card, SI: a smaller press would be rounded away
export function stepped(key: string, value: number, up: boolean, system: System, drive_step = 0): string | undefined {
  const step = steps[key];
  if (!step) return undefined;
  const factor = shownIn(step.kind, system).factor;
  if (drive_step > step[system] * factor) return `${Number(inUnit(value + (up ? drive_step : -drive_step), step.kind, system).toFixed(6))} ${shownIn(step.kind, system).unit}`;
  const by = step[system];
  const now = inUnit(value, step.kind, system);
  const onGrid = now / by;
  const next = up ? Math.floor(onGrid + 1e-6) + 1 : Math.ceil(onGrid - 1e-6) - 1;
  const figure = (key === "sensor.trim" ? next : Math.max(0, next)) * by;
  return `${Number(figure.toFixed(6))} ${shownIn(step.kind, system).unit}`;
}

/// The number behind a text that stepped() wrote; nothing for another.
export function siOf(key: string, text: string, system: System): number | undefined {
  const step = steps[key];
  const found = /^(-?\d+(?:\.\d+)?) (\S+)$/.exec(text);
  return step && found && found[2] === shownIn(step.kind, system).unit ? toSi(Number(found[1]), step.kind, system) : undefined;
}

/// What a person typed, with the unit that is shown where none was typed.
export function typed(key: string, text: string, system: System): string {
  const plainNumber = /^\s*[+-]?\d+(?:[.,]\d+)?\s*$/.test(text);
  const step = steps[key];
  return plainNumber && step ? `${text.trim().replace(",", ".")} ${shownIn(step.kind, system).unit}` : text.trim();
}
