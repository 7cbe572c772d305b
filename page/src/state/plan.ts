// The parts of a plan's JSON (src/sheet/json.cc) that the page shows.
export interface Setting {
  value: number | string;
  text: string;
  because: string;
  feasible: boolean;
  imposed?: boolean;
  stands_in_the_way?: string;
  would_change_it?: string;
}

export interface Spread {
  low: number | null;
  middle: number | null;
  high: number | null;
}

export interface MapRow {
  speed_hz: number;
  dry_a: Spread;
  shut_a: Spread;
  least_draw_a: Spread;
  most_draw_a: Spread;
  dry_w: Spread;
  shut_w: Spread;
  least_draw_w: Spread;
  most_draw_w: Spread;
}

export interface ScenarioOfPlan {
  name: string;
  title: string;
  runs: number;
  failed: number;
  margin: number;
  fail_upper95: number;
  worst: { draw: number; passed: boolean; says: string; distance_says?: string };
}

/// One line to enter in the drive whose card was chosen.
export interface CardEntry {
  key: string;
  label: string;
  where: string;
  enter: string;
  derived?: number; // SI of ours; not of a choice
  entered?: number;
  unit?: string;
  step?: number | null;
  fixed?: boolean;
  clipped: boolean;
  rounded: string;
}

export interface PlanDrive {
  name: string;
  entries: CardEntry[];
  lacking: { key: string; unguarded: string }[];
  lost_by_rounding: { name: string; of_plan: boolean; derived: number; entered: number }[];
}

export interface Plan {
  site: { name: string };
  assumptions: { key: string; range: string; because: string }[];
  settings: Record<string, Setting>;
  drive?: PlanDrive;
  cautions: { key: string; says: string }[];
  map: { rows: MapRow[]; target_pa: number };
  well: { says: string[] | string };
  proof: {
    proven: boolean;
    draws: number;
    scenarios: ScenarioOfPlan[];
    margins: { key: string; value: number | null; unit: string; says: string }[];
    measure: { key: string; share: number; how: string; minutes: number; scenario: string }[];
  };
}
