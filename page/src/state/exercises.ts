// Exercises on the example sites. What is right is decided by simulation: by the runs of a proof for settings, by the
// run of each cause for "why does it stop".
import { desk, hands } from "../core/hand";
import type { SiteText } from "../core/protocol";
import { demos } from "./demos";
import type { Act, LiveEvent, Told } from "./live";
import { request, type Kept } from "./store";

export type ExerciseName = "sleep" | "trough" | "night" | "shut";

export interface Exercise {
  name: ExerciseName;
  site: SiteText;
  set: Record<string, string>; // what somebody has spoiled
  scenarios: string[]; // that must hold with the answer
  goTo: "settings" | "well";
}

const shallow = demos[0]!;
const named = (title: string): SiteText => ({ ...shallow, file: `${title}.toml`, text: shallow.text.replace(/^name = .*$/m, `name = ${JSON.stringify(title)}`) });
const lawn = (title: string): SiteText => ({
  ...named(title),
  text: `${named(title).text.replace(/^longest_run .*$/m, 'longest_run = "3 h"')}
[[zone]]
name = "front lawn"
flow = "5 gpm"
pressure = "35 psi"
time = "60 min"

[[zone]]
name = "beds"
flow = "3 gpm"
pressure = "30 psi"
time = "60 min"
`,
});

export const exercises: Exercise[] = [
  { name: "sleep", site: named("Sleepless Acre"), set: { "sleep.speed_below": "30 Hz" }, scenarios: ["quiet_house", "quiet_house_with_leak", "least_draw"], goTo: "settings" },
  { name: "night", site: lawn("Owl Meadow"), set: {}, scenarios: [], goTo: "well" },
  { name: "trough", site: named("Trough End"), set: { "long_run.limit": "20 min" }, scenarios: ["long_irrigation", "burst_line", "burst_far"], goTo: "settings" },
  { name: "shut", site: named("Forgotten Valve"), set: { "closed.amps_below": "0.5 A" }, scenarios: ["shut_before_sensor", "shut_while_running", "clogged_intake", "ordinary_morning"], goTo: "settings" },
];

/// What each cause does to the plant; the first is the one that the well of the exercise has.
export const nightCauses: Record<string, Act[]> = {
  yield: [{ act: "inflow", value: 0.08 }],
  check: [{ act: "check_leak", value: 4e-6 }],
  tank: [{ act: "tank_charge", value: 0.15 }],
  volts: [{ act: "supply", value: 0.86 }],
};
export const hiddenAct: Act = nightCauses.yield![0]!;

/// Wells of the check: the middle one and the next of the sequence.
export const checkDraws = 6;

export interface Fails {
  name: string;
  failed: number;
  runs: number;
}

/// Runs the answer through its scenarios; empty if all hold.
export async function failsOf(exercise: Exercise, kept: Kept): Promise<Fails[]> {
  const half = Math.ceil(checkDraws / hands.length);
  const answers = await Promise.all(
    hands.map(async (hand, i) => {
      const first = i * half;
      const count = Math.min(half, checkDraws - first);
      return count > 0 ? hand.ask(request("share", { first, count }, kept)) : undefined;
    }),
  );
  const sum = new Map(exercise.scenarios.map((name) => [name, { name, failed: 0, runs: 0 }]));
  for (const answer of answers) {
    if (!answer) continue;
    if (answer.exit_code !== 0) throw new Error(answer.err);
    const runs = (JSON.parse(answer.out) as { runs: Record<string, [number, boolean][]> }).runs;
    for (const one of sum.values()) {
      for (const [, passed] of runs[one.name] ?? []) {
        ++one.runs;
        one.failed += passed ? 0 : 1;
      }
    }
  }
  return [...sum.values()].filter((each) => each.failed > 0 || each.runs === 0);
}

/// What the drive does in a night of three hours with both zones on, with a cause at work.
export async function nightWith(cause: string, kept: Kept): Promise<LiveEvent[]> {
  const tell = async (live: Record<string, unknown>, full = false) => {
    const answer = await desk.ask(full ? { ...request("live", {}, kept), live } : { command: "live", live });
    if (answer.exit_code !== 0) throw new Error(answer.err);
    return JSON.parse(answer.out) as Told;
  };
  await tell({ do: "open" }, true);
  const acts = [...nightCauses[cause]!, { act: "outlet", outlet: 4, value: 1 }, { act: "outlet", outlet: 5, value: 1 }];
  const events: LiveEvent[] = [];
  for (let i = 0; i < 6; ++i) {
    events.push(...(await tell({ do: "go", seconds: 1800, every: 60, acts: i === 0 ? acts : [] })).events);
  }
  return events;
}

/// What the owner tells: it says that the line is shut, and not at once.
export function isTheNight(events: LiveEvent[]): boolean {
  const stop = events.find((each) => each.kind === 3);
  return stop !== undefined && stop.cause === "closed_discharge" && stop.t > 600;
}
