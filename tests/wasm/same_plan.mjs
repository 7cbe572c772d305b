// The plan of every example by the WebAssembly module, made in shares and put together, and the native program's, made
// at once: the same bytes.
//   node same_plan.mjs MODULE PROGRAM SOURCE_FOLDER [DRAWS]
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { existsSync, readFileSync, readdirSync } from "node:fs";
import { load } from "./load.mjs";

const [modulePath, program, source, draws = "8"] = process.argv.slice(2);
const count = Number(draws);
const ask = await load(readFileSync(modulePath), () => {});

/// Where two plans differ first, and by how much.
function firstDifference(a, b, at) {
  if (a === null || b === null || typeof a !== "object" || typeof b !== "object") return a === b ? "" : `${at}: ${a} and ${b}`;
  for (const key of new Set([...Object.keys(a), ...Object.keys(b)])) {
    const found = firstDifference(a[key] ?? null, b[key] ?? null, `${at}.${key}`);
    if (found) return found;
  }
  return "";
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
  const alone = native(file);
  assert.ok(joined.out === alone, firstDifference(JSON.parse(joined.out), JSON.parse(alone), name) || `${name}: written otherwise`);
  console.log(`${name}: ${joined.out.length} bytes, all the same`);
  ++sites;
}
assert.ok(sites >= 2, "examples were looked at");
