// The plan of every example by the WebAssembly module, made in shares and put together, against the native program's
// at once: the same JSON, numbers to 1e-9 of their size but for what is said at `extreme`.
//   node same_plan.mjs MODULE PROGRAM SOURCE_FOLDER [DRAWS]
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { existsSync, readFileSync, readdirSync } from "node:fs";
import { load } from "./load.mjs";

const [modulePath, program, source, draws = "8"] = process.argv.slice(2);
const count = Number(draws);
const ask = await load(readFileSync(modulePath), () => {});

/// Extremes over a run hang on where the integrator's steps end, and those on the last bit of exp and pow, in which C
/// libraries differ: they agree within the integrator's tolerance, and never in a verdict.
const extreme = /\.(worst\.(value|distance|says|distance_says|draw|criterion)|margin|margins\.\d+\.(value|says|draw)|measure|drivers|first_failure|hunting)/;
/// Where noise decides when a timer starts, that may be a dozen samples of 50 ms earlier or later out of two minutes.
const samplesOfMargin = 5e-3;
let strayed = 0;

function compare(a, b, at) {
  const stray = extreme.test(at);
  if (typeof a === "number" && typeof b === "number") {
    // A pressure is a small difference of large ones: it counts to 1e-9 of an atmosphere; anything else to 1e-9 of 1.
    const size = Math.max(at.endsWith("_pa") || at.includes("_pa.") ? 101325 : 1, Math.abs(a), Math.abs(b));
    // The map's points are roots, sought to about 1e-9 themselves.
    if (!(Math.abs(a - b) <= (at.includes(".map.rows.") ? 1e-8 : 1e-9) * size)) {
      ++strayed;
      assert.ok(stray, `${at}: ${a} and ${b}`);
      if (at.endsWith(".margin")) assert.ok(Math.abs(a - b) <= samplesOfMargin, `${at}: ${a} and ${b}`);
    }
    return 1;
  }
  if (a === null || b === null || typeof a !== "object" || typeof b !== "object") {
    if (a !== b) assert.ok(stray, `${at}: ${a} and ${b}`);
    return 0;
  }
  if (!stray) assert.deepEqual(Object.keys(a), Object.keys(b), at);
  return Object.keys(a).reduce((sum, key) => sum + compare(a[key], b[key] ?? null, `${at}.${key}`), 0);
}

function native(file) {
  try {
    return execFileSync(program, ["plan", file, "--json", "--draws", draws], { encoding: "utf8", stdio: ["ignore", "pipe", "ignore"], maxBuffer: 1 << 26 });
  } catch (error) {
    return error.stdout; // not proven: exit code 1
  }
}

let sites = 0;
for (const name of readdirSync(`${source}/examples`).filter((each) => each.endsWith(".toml")).sort()) {
  const file = `${source}/examples/${name}`;
  const text = readFileSync(file, "utf8");
  const named = [...text.matchAll(/^\s*curve_file\s*=\s*"([^"]+)"/gm)].map((match) => match[1]);
  const beside = named.filter((each) => existsSync(`${source}/examples/${each}`)).map((each) => ({ name: each, text: readFileSync(`${source}/examples/${each}`, "utf8") }));
  const site = { file, text, beside };
  const options = { draws: count, json: true };
  if (ask({ command: "check", site }).exit_code !== 0) continue; // no site, or a broken one
  const shares = [];
  for (let first = 0; first < count; first += 4) {
    const share = ask({ command: "share", site, options: { ...options, first, count: Math.min(4, count - first) } });
    assert.equal(share.exit_code, 0, share.err);
    shares.push(share.out);
  }
  const joined = ask({ command: "plan", site, options: { ...options, made: `[${shares.join(",")}]` } });
  assert.ok(joined.exit_code <= 1, joined.err);
  const numbers = compare(JSON.parse(joined.out), JSON.parse(native(file)), name);
  console.log(`${name}: ${numbers - strayed} of ${numbers} numbers the same to 1e-9, the others within the integrator's tolerance`);
  strayed = 0;
  ++sites;
}
assert.ok(sites >= 2, "examples were looked at");
