// One hand: a worker with a core of its own. The first message brings the compiled module, each other one request.
import { type Ask, instantiate } from "./instance";
import type { Request } from "./protocol";

let ready: Promise<Ask> | undefined;

self.onmessage = async (event: MessageEvent<{ module?: WebAssembly.Module | ArrayBuffer; id?: number; request?: Request }>) => {
  const { module, id, request } = event.data;
  if (module) {
    ready = Promise.resolve(module instanceof WebAssembly.Module ? module : WebAssembly.compile(module)).then((compiled) =>
      instantiate(compiled, (done, all) => self.postMessage({ progress: [done, all] })),
    );
    return;
  }
  try {
    const ask = await ready!;
    self.postMessage({ id, answer: ask(request!) });
  } catch (error) {
    // A trap leaves the instance unfit: the hand is given up.
    self.postMessage({ id, broken: String(error) });
  }
};
