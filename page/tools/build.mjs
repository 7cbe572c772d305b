// Builds the page into dist: the core as WebAssembly, one script, one style, and the list of files that the service
// worker keeps. Wants ../build/wasm-release/apps/wasm/wellproof.wasm, or the path given.
import { createHash } from "node:crypto";
import { copyFileSync, existsSync, readFileSync, readdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "vite";

const here = join(dirname(fileURLToPath(import.meta.url)), "..");
const core = process.argv[2] ?? join(here, "../build/wasm-release/apps/wasm/wellproof.wasm");
if (!existsSync(core)) {
  console.error(`${core} is not there. Build it first:\n  cmake --preset wasm-release && cmake --build --preset wasm-release`);
  process.exit(1);
}
await build({ root: here, logLevel: "warn", configFile: join(here, "vite.config.ts") });

const dist = join(here, "dist");
copyFileSync(core, join(dist, "core.wasm"));
// A page opened as a file may fetch nothing; it loads the same bytes as a script.
writeFileSync(join(dist, "core.js"), `globalThis.wellproofCore="${readFileSync(core).toString("base64")}";\n`);

// A classic script loads from a file too; a module does not.
const index = join(dist, "index.html");
const html = readFileSync(index, "utf8");
const plain = html
  .replace(/<script type="module"[^>]*src="([^"]+)"[^>]*><\/script>/, "")
  .replace(/ crossorigin/g, "")
  .replace("</body>", '  <script src="./page.js"></script>\n  </body>');
if (plain === html || !html.includes("page.js")) {
  throw new Error("index.html is not what was expected");
}
writeFileSync(index, plain);

const names = readdirSync(dist).filter((name) => !["sw.js", "core.js"].includes(name)).sort();
const hash = createHash("sha256");
for (const name of names) {
  hash.update(name).update(readFileSync(join(dist, name)));
}
const version = hash.digest("hex").slice(0, 16);
const worker = readFileSync(join(here, "src/sw.js"), "utf8");
writeFileSync(
  join(dist, "sw.js"),
  worker.replace('"VERSION"', JSON.stringify(version)).replace('["FILES"]', JSON.stringify(["./", ...names.map((n) => `./${n}`)])),
);
console.log(`page/dist: ${names.length + 2} files, version ${version}`);
