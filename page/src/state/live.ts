// The run that somebody stands in: it is carried on frame by frame, with what was done to it in between.
import { batch, effect, signal } from "@preact/signals";
import { stage } from "../core/hand";
import { open, request, system } from "./store";

export interface Point {
  t: number;
  tee_pa: number;
  outlet_pa: number;
  shown_pa: number;
  speed_hz: number;
  current_a: number;
  power_w: number;
  pumped_m3_s: number;
  drawn_m3_s: number;
  inflow_m3_s: number;
  level_m: number;
  wetness: number;
  winding_c: number;
  mode: string;
}

/// What would have been, a list for each figure that is drawn.
export type Ghost = { t: number[] } & Partial<Record<keyof Point, number[]>>;

export interface LiveWords {
  mode: string;
  cause: string | null;
  mode_for_s: number;
  rest_left_s: number;
  sleep_left_s: number;
  dry_left_s: number;
  closed_left_s: number;
  long_run_left_s: number;
  filtered_current_a: number;
  tries: number;
}

export interface Scene {
  name: string;
  static_level_m: number;
  well_depth_m: number;
  casing_m: number;
  fracture_m: number;
  setting_m: number;
  submergence_m: number;
  tank_elevation_m: number;
  outlet_rise_m: number;
  outlet_wanted_pa: number;
  tank_volume_m3: number;
  precharge_pa: number;
  rating_pa: number;
  relief_pa: number;
  top_hz: number;
  plate_a: number;
  winding_limit_c: number;
  best_flow_m3_s: number;
  guard_speed_share: number;
  guard_pressure_share: number;
  guards_any_speed: boolean;
  guards_by_power: boolean;
  sleeps_by_speed: boolean;
  two_contacts: boolean;
  outlets: { flow_m3_s: number; pressure_pa: number }[];
  zones: string[];
}

export interface LiveEvent {
  t: number;
  mode: string;
  kind: number;
  cause: string | null;
  says: string;
}

export interface Told {
  now: Point;
  words: LiveWords;
  shift_m: number;
  empty: number;
  check_open: boolean;
  ending: string;
  points: Point[];
  events: LiveEvent[];
  scene?: Scene;
  settings?: Record<string, number>;
}

export interface Act {
  act: string;
  value: number;
  outlet?: number;
}

export const outletPlace = { leak: 0, least: 1, house: 2, burst: 3, firstZone: 4 };

export const told = signal<Told | undefined>(undefined);
export const scene = signal<Scene | undefined>(undefined);
export const inForce = signal<Record<string, number>>({});
export const trace = signal<Point[]>([]);
export const ghost = signal<Ghost>({ t: [] });
export const events = signal<LiveEvent[]>([]);
export const pace = signal(1);
export const watching = signal<{ scenario: string; draw: number } | undefined>(undefined);
export const inputs = signal<Record<string, number>>({}); // by act and outlet, what was set last
export const frames = { shown: 0 };
export const lastAgain = { took_ms: 0 };

const keep = 1500;
let acts: Act[] = [];
let asked = false;
let generation = 0;

export const nameOf = (act: Act) => (act.act === "outlet" ? `outlet.${act.outlet ?? 0}` : act.act);

export function act(...these: Act[]) {
  acts.push(...these);
  const next = { ...inputs.value };
  for (const each of these) next[nameOf(each)] = each.value;
  inputs.value = next;
  void carry(0);
}

function take(answer: Told) {
  batch(() => {
    told.value = answer;
    if (answer.scene) scene.value = answer.scene;
    if (answer.settings) inForce.value = answer.settings;
    if (answer.points.length) {
      const all = trace.value.concat(answer.points);
      trace.value = all.length > keep ? all.slice(all.length - keep) : all;
    }
    if (answer.events.length) events.value = [...events.value, ...answer.events].slice(-60);
  });
}

/// The open site afresh: asleep at its target, or as a scenario begins.
export async function openLive(what?: { scenario: string; draw: number }) {
  const mine = ++generation;
  acts = [];
  const answer = await stage.ask({ ...request("live"), live: { do: "open", ...(what ?? {}) } });
  if (mine !== generation) return;
  batch(() => {
    trace.value = [];
    ghost.value = { t: [] };
    events.value = [];
    inputs.value = {};
    watching.value = what;
    told.value = undefined;
    if (answer.exit_code === 0) take(JSON.parse(answer.out) as Told);
    else scene.value = undefined;
  });
}

export async function setLive() {
  const mine = generation;
  const answer = await stage.ask({ ...request("live"), live: { do: "set" } });
  if (mine === generation && answer.exit_code === 0) take(JSON.parse(answer.out) as Told);
}

/// What the last minutes would have been under the settings that stand now, drawn beside what was.
export async function again() {
  const mine = generation;
  const began = performance.now();
  const answer = await stage.ask({ ...request("live"), live: { do: "again", every: 0.5 } });
  lastAgain.took_ms = performance.now() - began;
  if (mine === generation && answer.exit_code === 0) ghost.value = (JSON.parse(answer.out) as { columns: Ghost }).columns;
}

export async function resetDrive() {
  await stage.ask({ command: "live", live: { do: "reset" } });
}

/// Carries the run on by plant seconds; at once if it is 0, for what was done to show.
export async function carry(seconds: number, every = Math.max(0.2, seconds / 4)): Promise<void> {
  if (asked || !told.value) return;
  asked = true;
  const mine = generation;
  const sent = acts;
  acts = [];
  const answer = await stage.ask({ command: "live", live: { do: "go", seconds, every, acts: sent } });
  asked = false;
  if (mine === generation && answer.exit_code === 0) take(JSON.parse(answer.out) as Told);
}

/// On to the next thing that happens, at most six hours.
export async function skip() {
  const had = events.value.at(-1)?.t ?? -1;
  for (let i = 0; i < 180; ++i) {
    while (asked) await new Promise((done) => setTimeout(done, 5));
    await carry(120, 5);
    if ((events.value.at(-1)?.t ?? -1) > had || told.value?.ending !== "finished") return;
  }
}

let last = 0;
function frame(now: number) {
  const passed = Math.min(0.25, (now - last) / 1000);
  last = now;
  ++frames.shown;
  if (pace.value > 0 && told.value?.ending === "finished" && !document.hidden) {
    owed = Math.min(owed + passed * pace.value, 0.25 * pace.value);
    if (!asked) {
      const seconds = owed;
      owed = 0;
      void carry(seconds);
    }
  }
  requestAnimationFrame(frame);
}
let owed = 0;

export function startLive() {
  let id = "";
  let text = "";
  let set = "";
  let card = "";
  effect(() => {
    const kept = open.value;
    void system.value;
    const nextSet = JSON.stringify(kept.set);
    const nextCard = kept.card?.text ?? "";
    if (kept.id !== id || kept.site.text !== text || nextCard !== card) {
      void openLive();
    } else if (nextSet !== set) {
      void setLive().then(again);
    }
    [id, text, set, card] = [kept.id, kept.site.text, nextSet, nextCard];
  });
  requestAnimationFrame(frame);
}
