// Which quantities of a site are asked in which step, the first ones before a tap on "more".
export interface Step {
  keys: string[]; // asked at once
  more: string[]; // beginnings of keys
}

export const formSteps: Step[] = [
  {
    keys: ["well.static_level", "well.depth", "well.test_flow", "well.test_time", "well.test_level", "well.casing"],
    more: ["well."],
  },
  {
    keys: ["pump.setting", "pump.rated_flow", "pump.rated_head", "pump.stages", "motor.power", "motor.voltage", "motor.service_factor_current", "cable.size", "cable.length"],
    more: ["pump.", "motor.", "cable."],
  },
  {
    keys: ["tank.volume", "tank.precharge", "tank.rating"],
    more: ["pipe.", "tank."],
  },
  {
    keys: ["demand.outlet_pressure", "demand.outlet_rise", "demand.least_draw", "demand.peak_draw", "demand.longest_run", "demand.leak"],
    more: ["demand.", "zone."],
  },
  {
    keys: ["supply.voltage", "drive.rated_current", "drive.top_frequency", "sensor.full_scale", "limits.fittings_rating", "limits.relief", "limits.water_loss"],
    more: ["supply.", "drive.", "sensor.", "limits."],
  },
];

export interface Quantity {
  key: string;
  meaning: string;
  text: string;
  unit: string;
  least: string;
  most: string;
  given: boolean;
  because?: string;
}

export interface Checked {
  name: string;
  pipes: { place: string; kind: string; size: string }[];
  zones: string[];
  quantities: Quantity[];
}

/// The quantities of a step: those asked at once, in their order, and the rest.
export function ofStep(step: Step, all: Quantity[]): { first: Quantity[]; rest: Quantity[] } {
  const by = new Map(all.map((each) => [each.key, each]));
  const first = step.keys.flatMap((key) => by.get(key) ?? []);
  const asked = new Set(step.keys);
  return { first, rest: all.filter((each) => !asked.has(each.key) && step.more.some((start) => each.key.startsWith(start))) };
}
