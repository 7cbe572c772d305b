// The WebAssembly module is the same door: it takes a site, refuses a bad one with a finding, and takes another request
// after that. The loader is what a page would use.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { load } from "./load.mjs";

const [modulePath, sourceFolder] = process.argv.slice(2);

const ask = await load(readFileSync(modulePath), () => {});
const text = readFileSync(`${sourceFolder}/examples/shallow_strong.toml`, "utf8");

const fine = ask({ command: "check", site: { file: "mine.toml", text } });
assert.equal(fine.exit_code, 0, fine.err);

const broken = ask({ command: "check", site: { file: "mine.toml", text: `${text}\n[well]\ndepht = "80 ft"\n` } });
assert.equal(broken.exit_code, 2);
assert.match(broken.err, /^mine\.toml:\d+:\d+: /);

const unknown = ask({ command: "paln", site: { file: "mine.toml", text } });
assert.equal(unknown.exit_code, 2);
assert.match(unknown.err, /plan/);

assert.deepEqual(ask({ command: "check", site: { file: "mine.toml", text } }), fine, "the same request, the same answer");
console.log("3 requests and one again");
