// The core as a WebAssembly instance: no generated code around it, and nothing it could reach outside.
import type { Answer, Request } from "./protocol";

interface Exports {
  memory: WebAssembly.Memory;
  _initialize(): void;
  room(bytes: number): number;
  ask(): number;
  answer(): number;
}

export type Ask = (request: Request) => Answer;

export async function instantiate(module: WebAssembly.Module, progress: (done: number, all: number) => void): Promise<Ask> {
  let core: Exports;
  const view = () => new DataView(core.memory.buffer);
  const imports: WebAssembly.Imports = {};
  for (const { module: space, name } of WebAssembly.Module.imports(module)) {
    (imports[space] ??= {})[name] = () => {
      throw new Error(`the core called ${space}.${name}, which a page does not have`);
    };
  }
  Object.assign((imports.env ??= {}), { emscripten_notify_memory_growth: () => {} });
  Object.assign((imports.page ??= {}), { progress });
  Object.assign((imports.wasi_snapshot_preview1 ??= {}), {
    environ_get: () => 0,
    environ_sizes_get: (count: number, size: number) => {
      view().setUint32(count, 0, true);
      view().setUint32(size, 0, true);
      return 0;
    },
  });
  const instance = await WebAssembly.instantiate(module, imports);
  core = instance.exports as unknown as Exports;
  core._initialize();
  const encoder = new TextEncoder();
  const decoder = new TextDecoder();
  return (request) => {
    const sent = encoder.encode(JSON.stringify(request));
    const where = core.room(sent.length);
    new Uint8Array(core.memory.buffer).set(sent, where);
    const size = core.ask();
    return JSON.parse(decoder.decode(new Uint8Array(core.memory.buffer, core.answer(), size))) as Answer;
  };
}
