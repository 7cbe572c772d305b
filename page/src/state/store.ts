// What the page knows: the sites in this browser, the one that is open, its settings and their proof.
import { batch, computed, effect, signal } from "@preact/signals";
import { desk, slow } from "../core/hand";
import { type Answer, type Finding, findingsOf, type NamedText, type Request, type SiteText } from "../core/protocol";
import { type Language, words } from "../words/words";
import { cardDemos, nameOfCard } from "./cards";
import { demos } from "./demos";
import type { Plan } from "./plan";
import { ProofRun, type SoFar } from "./proof";
import type { Told } from "./told";
import type { System } from "./units";

export interface Kept {
  id: string;
  site: SiteText;
  set: Record<string, string>; // settings given by hand, as text
  readings: string;
  history: string;
  told?: Told | undefined;
  card?: NamedText | undefined; // of the drive
  demo: boolean;
}

export type View = "well" | "settings" | "site" | "visit" | "history" | "exercises";
export const views: View[] = ["well", "settings", "site", "visit", "history", "exercises"];

/// Draws of a first proof, which a small device makes in seconds, and of one that somebody waits for.
export const firstDraws = 64;
export const moreDraws = 256;

function stored<T>(key: string, otherwise: T): T {
  try {
    const text = localStorage.getItem(`wellproof.${key}`);
    return text === null ? otherwise : (JSON.parse(text) as T);
  } catch {
    return otherwise; // no storage, or not ours
  }
}

function store(key: string, value: unknown) {
  try {
    localStorage.setItem(`wellproof.${key}`, JSON.stringify(value));
  } catch {
    // A browser that keeps nothing: the page works on until it is closed.
  }
}

export const language = signal<Language>(stored<Language>("language", navigator.language?.startsWith("es") ? "es" : "en"));
export const system = signal<System>(stored<System>("units", "us"));
export const look = signal<{ sun: boolean; big: boolean }>(stored("look", { sun: false, big: false }));
export const view = signal<View>("well");
export const w = computed(() => words[language.value]);

const fresh = (site: SiteText, demo: boolean): Kept => ({
  id: demo ? site.file : `${Date.now().toString(36)}${Math.random().toString(36).slice(2, 8)}`,
  site,
  set: {},
  readings: "",
  history: "",
  demo,
});

function isKept(each: unknown): each is Kept {
  const one = each as Kept;
  return typeof one?.id === "string" && typeof one.site?.text === "string" && Array.isArray(one.site.beside);
}

const own = stored<unknown[]>("sites", []);
export const sites = signal<Kept[]>([...demos.map((demo) => fresh(demo, true)), ...(Array.isArray(own) ? own.filter(isKept) : [])]);
export const openId = signal(stored<string>("open", demos[0]!.file));
export const open = computed(() => sites.value.find((each) => each.id === openId.value) ?? sites.value[0]!);

export const plan = signal<Plan | undefined>(undefined); // settings as they stand; its proof only once it is whole
export const derivedTexts = signal<Record<string, string>>({}); // without what was given by hand
export const findings = signal<Finding[]>([]);
export const soFar = signal<SoFar | undefined>(undefined);
export const busy = signal(false);
export const draws = signal(firstDraws);

const isNamedText = (each: unknown): each is NamedText => typeof (each as NamedText)?.file === "string" && typeof (each as NamedText).text === "string";
const broughtCards = stored<unknown[]>("cards", []);
export const cards = signal<NamedText[]>([...cardDemos, ...(Array.isArray(broughtCards) ? broughtCards.filter(isNamedText) : [])]);

effect(() => store("cards", cards.value.filter((each) => !cardDemos.includes(each))));
effect(() => store("language", language.value));
effect(() => store("units", system.value));
effect(() => store("look", look.value));
effect(() => store("open", openId.value));
effect(() => store("sites", sites.value.filter((each) => !each.demo)));

export function request(command: string, extra: Record<string, unknown> = {}, kept = open.value): Request {
  return {
    command,
    site: { file: kept.site.file, text: kept.site.text, beside: kept.site.beside },
    options: {
      draws: draws.value,
      json: true,
      units: system.value,
      set: Object.entries(kept.set).map(([key, text]) => `${key}=${text}`),
      ...(kept.card ? { card: { file: kept.card.file, text: kept.card.text } } : {}),
      ...extra,
    },
  };
}

let running: ProofRun | undefined;
let turn = 0;
let proving = true;

/// Settings of the open site, then their proof. What was being proved is let go.
export async function planAnew(): Promise<void> {
  const mine = ++turn;
  running?.cancel();
  running = undefined;
  proving = true;
  batch(() => {
    busy.value = true;
    soFar.value = undefined;
  });
  const kept = open.value;
  const bare = await desk.ask(request("derive", { set: [] }, kept));
  const answer = Object.keys(kept.set).length ? await desk.ask(request("derive", {}, kept)) : bare;
  if (mine !== turn) return;
  if (answer.exit_code > 1) {
    batch(() => {
      findings.value = findingsOf(answer);
      busy.value = false;
      // Settings that contradict each other leave the site as it is; a site that cannot be read has no plan.
      if (bare.exit_code > 1) plan.value = undefined;
    });
    return;
  }
  batch(() => {
    findings.value = [];
    plan.value = JSON.parse(answer.out) as Plan;
    const texts = (JSON.parse(bare.out) as Plan).settings;
    derivedTexts.value = Object.fromEntries(Object.entries(texts).map(([key, one]) => [key, one.text]));
  });
  if (!proving) return;
  const derived = bare.files.find((file) => file.name === "derived")?.text ?? "";
  const proof = new ProofRun(request("plan", {}, kept), derived, draws.value, (known) => {
    if (mine === turn) soFar.value = known;
  });
  running = proof;
  const { plan: whole, error } = await proof.ended;
  if (mine !== turn) return;
  batch(() => {
    if (whole) plan.value = whole;
    if (error) findings.value = findingsOf(error);
    busy.value = false;
  });
}

/// Ends the proof; the settings themselves still come.
export function cancelProof() {
  running?.cancel();
  proving = false;
  busy.value = false;
}

/// Changes the open site; a demo stays as it is and a copy is changed.
export function change(by: Partial<Pick<Kept, "site" | "set" | "readings" | "history" | "told" | "card">>) {
  const now = open.value;
  const copied = now.demo && by.site !== undefined;
  const next: Kept = copied ? { ...fresh(now.site, false), set: now.set, card: now.card, ...by } : { ...now, ...by };
  batch(() => {
    sites.value = copied ? [...sites.value, next] : sites.value.map((each) => (each.id === now.id ? next : each));
    openId.value = next.id;
  });
}

export function give(key: string, text: string | undefined) {
  const set = { ...open.value.set };
  if (text === undefined || text === derivedTexts.value[key]) delete set[key];
  else set[key] = text;
  change({ set });
}

/// Takes a card for the open site if the core can read it; otherwise what is wrong with it.
export async function takeCard(card: NamedText): Promise<Finding[]> {
  const kept = open.value;
  const answer = await desk.ask(request("derive", { set: [] }, { ...kept, card }));
  if (answer.exit_code > 1) return findingsOf(answer);
  const known = cards.value.some((each) => each.file === card.file && each.text === card.text);
  batch(() => {
    // One of the same name is the newer version of it.
    if (!known) cards.value = [...cards.value.filter((each) => cardDemos.includes(each) || nameOfCard(each) !== nameOfCard(card)), card];
    if (open.value.id === kept.id) change({ card });
  });
  return [];
}

export function takeIn(site: SiteText): Kept {
  const kept = fresh(site, false);
  batch(() => {
    sites.value = [...sites.value, kept];
    openId.value = kept.id;
  });
  return kept;
}

export function letGo(id: string) {
  batch(() => {
    sites.value = sites.value.filter((each) => each.id !== id || each.demo);
    if (openId.value === id) openId.value = sites.value[0]!.id;
  });
}

/// The same, where the answer takes its time.
export function askSlow(command: string, options: Record<string, unknown> = {}, parts: Record<string, unknown> = {}): Promise<Answer> {
  return slow.ask({ ...request(command, options), ...parts });
}

/// Asks in the name of the open site, whatever is being proved.
export function ask(command: string, options: Record<string, unknown> = {}, parts: Record<string, unknown> = {}): Promise<Answer> {
  return desk.ask({ ...request(command, options), ...parts });
}
