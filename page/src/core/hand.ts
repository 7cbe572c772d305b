// Hands that do the computing, so that the page itself never waits.
import HandWorker from "./worker?worker&inline";
import type { Answer, Request } from "./protocol";

declare global {
  var wellproofCore: string | undefined;
}

type Waiting = { done: (answer: Answer) => void; progress?: ((done: number, all: number) => void) | undefined };

function machine(says: string): Answer {
  return { exit_code: 3, out: "", err: says, files: [] };
}

async function bytesOfCore(): Promise<ArrayBuffer> {
  if (location.protocol !== "file:") {
    const got = await fetch("./core.wasm");
    if (!got.ok) throw new Error(`core.wasm: ${got.status}`);
    return got.arrayBuffer();
  }
  await new Promise<void>((done, failed) => {
    const script = document.createElement("script");
    script.src = "./core.js";
    script.onload = () => done();
    script.onerror = () => failed(new Error("core.js"));
    document.head.append(script);
  });
  const text = atob(globalThis.wellproofCore ?? "");
  return Uint8Array.from(text, (sign) => sign.charCodeAt(0)).buffer;
}

let compiled: Promise<{ module: WebAssembly.Module; bytes: ArrayBuffer }> | undefined;

export function core() {
  compiled ??= bytesOfCore().then(async (bytes) => ({ module: await WebAssembly.compile(bytes), bytes }));
  return compiled;
}

export class Hand {
  private worker: Worker | undefined;
  private waiting = new Map<number, Waiting>();
  private next = 1;
  private starting: Promise<Worker> | undefined;

  private async start(): Promise<Worker> {
    const { module, bytes } = await core();
    const worker = new HandWorker();
    worker.onmessage = (event: MessageEvent<{ id?: number; answer?: Answer; broken?: string; progress?: [number, number] }>) => {
      const { id, answer, broken, progress } = event.data;
      if (progress) {
        for (const each of this.waiting.values()) each.progress?.(...progress);
        return;
      }
      const whose = this.waiting.get(id!);
      this.waiting.delete(id!);
      if (broken) this.drop(broken);
      whose?.done(answer ?? machine(broken ?? "the core gave no answer"));
    };
    worker.onerror = (event) => this.drop(event.message || "a worker failed");
    try {
      worker.postMessage({ module });
    } catch {
      worker.postMessage({ module: bytes });
    }
    this.worker = worker;
    return worker;
  }

  /// Ends what it is doing; all that wait get an answer. The next request starts anew.
  drop(why = "cancelled") {
    this.worker?.terminate();
    this.worker = undefined;
    this.starting = undefined;
    const left = [...this.waiting.values()];
    this.waiting.clear();
    for (const each of left) each.done(machine(why));
  }

  async ask(request: Request, progress?: (done: number, all: number) => void): Promise<Answer> {
    try {
      this.starting ??= this.start();
      const worker = await this.starting;
      const id = this.next++;
      return await new Promise((done) => {
        this.waiting.set(id, { done, progress });
        worker.postMessage({ id, request });
      });
    } catch (error) {
      this.starting = undefined;
      return machine(String(error));
    }
  }
}

/// As many as the device has cores, at least one, at most eight.
export const hands: Hand[] = Array.from({ length: Math.min(8, Math.max(1, navigator.hardwareConcurrency || 2)) }, () => new Hand());
/// For what is asked in between, and for the run that somebody stands in.
export const desk = new Hand();
export const stage = new Hand();
/// For what takes its time and may be let go: sheet, fit, causes.
export const slow = new Hand();
