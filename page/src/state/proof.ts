// A proof made by several hands, some draws each: what is known so far, draw by draw, and the whole plan at the end.
import { hands } from "../core/hand";
import type { Answer, Request } from "../core/protocol";
import type { Plan } from "./plan";

export interface Scenario {
  name: string;
  runs: number;
  failed: number;
  margin: number;
  draw: number; // the one that came nearest
  says: string; // its criterion and figure
}

export interface SoFar {
  done: number;
  all: number;
  scenarios: Scenario[];
}

/// [draw, passed, margin, criterion, value, limit, ending, room]
type Run = [number, boolean, number, number, number, number, number, number | null];
interface Share {
  first: number;
  count: number;
  runs: Record<string, Run[]>;
  worst: Record<string, string>;
}

/// Adds a share to what is known. The nearest is the one that fails, else the smallest margin.
export function added(known: Scenario[], share: Share): Scenario[] {
  const names = known.length ? known.map((each) => each.name) : Object.keys(share.runs);
  return names.map((name, i) => {
    const before = known[i] ?? { name, runs: 0, failed: 0, margin: Infinity, draw: 0, says: "" };
    const next = { ...before };
    for (const [draw, passed, margin] of share.runs[name] ?? []) {
      ++next.runs;
      const nearer = !passed && next.failed === 0 ? true : (!passed || next.failed === 0) && margin < next.margin;
      next.failed += passed ? 0 : 1;
      if (nearer) {
        next.margin = margin;
        next.draw = draw;
        next.says = share.worst[name] ?? next.says;
      }
    }
    return next;
  });
}

/// Draws in the order in which they are made: the middle first, one at a time while a person waits, then more at once.
export function pieces(draws: number, workers: number): [first: number, count: number][] {
  const out: [number, number][] = [];
  let first = 0;
  while (first < draws) {
    const count = first < 4 * workers ? 1 : first < 32 ? 2 : 4;
    out.push([first, Math.min(count, draws - first)]);
    first += count;
  }
  return out;
}

export class ProofRun {
  private gone = false;
  readonly ended: Promise<{ plan?: Plan; error?: Answer }>;

  /// @param request of plan, with all its options
  /// @param derived what was derived from its site, so that not every hand has to
  constructor(
    private readonly request: Request,
    private readonly derived: string,
    private readonly draws: number,
    private readonly tell: (soFar: SoFar) => void,
  ) {
    this.ended = this.go();
  }

  /// Lets what is being computed end; nothing more is begun or told.
  cancel() {
    this.gone = true;
  }

  private async go(): Promise<{ plan?: Plan; error?: Answer }> {
    const left = pieces(this.draws, hands.length);
    const shares: string[] = [];
    let scenarios: Scenario[] = [];
    let done = 0;
    let error: Answer | undefined;
    const options = this.request.options as Record<string, unknown>;
    await Promise.all(
      hands.map(async (hand) => {
        let derived = this.derived; // a hand keeps it with the site
        for (let piece = left.shift(); piece && !this.gone && !error; piece = left.shift()) {
          const [first, count] = piece;
          const answer = await hand.ask({ ...this.request, command: "share", options: { ...options, first, count, derived } });
          derived = "";
          if (this.gone) return;
          if (answer.exit_code !== 0) {
            error = answer;
            return;
          }
          shares.push(answer.out);
          scenarios = added(scenarios, JSON.parse(answer.out) as Share);
          done += count;
          this.tell({ done, all: this.draws, scenarios });
        }
      }),
    );
    if (this.gone) return {};
    if (error) return { error };
    // Not the desk's: with a card what rounding costs may be run besides, and other settings are not to wait for that.
    const whole = await hands[0]!.ask({ ...this.request, options: { ...options, json: true, made: `[${shares.join(",")}]` } });
    return whole.exit_code > 1 ? { error: whole } : { plan: JSON.parse(whole.out) as Plan };
  }
}
