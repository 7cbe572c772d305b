// Loads the module as a page would. It holds the list of what the module may ask of its surroundings.
import assert from "node:assert/strict";

const known = ["page.progress", "env.emscripten_notify_memory_growth"];
for (const name of ["environ_get", "environ_sizes_get", "proc_exit", "fd_write", "fd_close", "fd_seek"]) {
  known.push(`wasi_snapshot_preview1.${name}`);
}

export async function load(bytes, progress) {
  const module = await WebAssembly.compile(bytes);
  const imports = {};
  for (const { module: space, name } of WebAssembly.Module.imports(module)) {
    assert.ok(known.includes(`${space}.${name}`), `a symbol is left open: ${space}.${name}`);
    imports[space] ??= {};
    imports[space][name] = () => {
      throw new Error(`the module called ${space}.${name}, which a page does not have`);
    };
  }
  let instance;
  const view = () => new DataView(instance.exports.memory.buffer);
  Object.assign((imports.env ??= {}), { emscripten_notify_memory_growth: () => {} });
  imports.page = { progress };
  Object.assign((imports.wasi_snapshot_preview1 ??= {}), {
    environ_get: () => 0,
    environ_sizes_get: (count, size) => {
      view().setUint32(count, 0, true);
      view().setUint32(size, 0, true);
      return 0;
    },
  });
  instance = await WebAssembly.instantiate(module, imports);
  instance.exports._initialize();
  return (request) => {
    const { memory, room, ask, answer } = instance.exports;
    const sent = new TextEncoder().encode(JSON.stringify(request));
    const where = room(sent.length);
    new Uint8Array(memory.buffer).set(sent, where);
    const size = ask();
    return JSON.parse(new TextDecoder().decode(new Uint8Array(memory.buffer, answer(), size)));
  };
}
