// The page in Chromium, path by path, and its figures.
//   node tests/browser/run.mjs [--shots DIR] [--program WELLPROOF] [NAME PART...]
import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { browserOf } from "./page.mjs";
import { serve } from "./serve.mjs";

const here = dirname(fileURLToPath(import.meta.url));
const dist = join(here, "../../dist");
if (!existsSync(join(dist, "index.html"))) {
  console.error("page/dist is not there: npm run build");
  process.exit(2);
}
const words = process.argv.slice(2);
const option = (name) => {
  const at = words.indexOf(name);
  return at < 0 ? undefined : words.splice(at, 2)[1];
};
const shots = option("--shots");
const program = option("--program");

const tests = [];
for (const name of ["well", "settings", "site", "card", "visit", "stops", "learn", "spanish", "looks", "figures", "served"]) {
  tests.push(...(await import(`./${name}.test.mjs`)).tests);
}
const browser = await browserOf();
const { server, url } = await serve(dist);
let passed = 0;
let failed = 0;
let skipped = 0;
for (const { name, run } of tests) {
  if (words.length && !words.some((part) => name.includes(part))) continue;
  const began = Date.now();
  try {
    const said = await run({ browser, url, dist, shots, program });
    if (said?.skipped) {
      ++skipped;
      console.log(`skipped ${name}: ${said.skipped}`);
    } else {
      ++passed;
      console.log(`ok      ${name} (${Date.now() - began} ms)${said ? `: ${said}` : ""}`);
    }
  } catch (error) {
    ++failed;
    console.log(`FAILED  ${name}: ${error.stack ?? error}`);
    for (const context of browser.contexts()) {
      for (const page of context.pages()) {
        console.log(`        it showed: ${(await page.locator("main").innerText().catch(String)).replace(/\s+/g, " ").slice(0, 600)}`);
      }
      await context.close().catch(() => {});
    }
  }
}
await browser.close();
server.close();
console.log(`${passed} passed, ${failed} failed, ${skipped} skipped`);
process.exit(failed || !passed ? 1 : 0);
