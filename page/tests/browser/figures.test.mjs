// How fast it is, and that it needs no network. Figures are printed; what is held here leaves room for a busy machine.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { gzipSync } from "node:zlib";
import { Seen, tabs } from "./page.mjs";
import { serve } from "./serve.mjs";

const busy = Number(process.env.WP_PAGE_ROOM ?? 4); // how much longer a busy machine may take

export const tests = [
  {
    name: "the core is under 1.5 MB gzipped",
    async run({ dist }) {
      const size = gzipSync(readFileSync(`${dist}/core.wasm`), { level: 9 }).length;
      assert.ok(size < 1.5e6);
      return `${(size / 1e6).toFixed(2)} MB`;
    },
  },
  {
    name: "ten minutes of the plant are simulated again at once",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url);
      await seen.page.locator("#house").fill("60");
      await seen.pace(60);
      await seen.page.waitForFunction(() => globalThis.wellproofSeen.told().now.t > 600);
      await seen.pace(0);
      await seen.tab("settings");
      await seen.page.waitForTimeout(1000);
      let least = Infinity;
      for (let i = 0; i < 4; ++i) {
        await seen.page.evaluate(() => (globalThis.wellproofSeen.lastAgain.took_ms = 0));
        await seen.page.getByRole("button", { name: "Wakes this far below: more" }).click();
        await seen.page.waitForFunction(() => globalThis.wellproofSeen.lastAgain.took_ms > 0);
        least = Math.min(least, await seen.page.evaluate(() => globalThis.wellproofSeen.lastAgain.took_ms));
      }
      assert.ok(least < 50 * busy, `${least} ms`);
      await seen.close();
      return `${least.toFixed(0)} ms`;
    },
  },
  {
    name: "frames while it runs",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url);
      await seen.page.locator("#house").fill("60");
      await seen.pace(10);
      await seen.mode("holding");
      const [from, began] = [await seen.page.evaluate(() => globalThis.wellproofSeen.frames.shown), Date.now()];
      await seen.page.waitForTimeout(3000);
      const rate = ((await seen.page.evaluate(() => globalThis.wellproofSeen.frames.shown)) - from) / ((Date.now() - began) / 1000);
      assert.ok(rate > 60 / busy, `${rate} frames a second`);
      await seen.close();
      return `${rate.toFixed(0)} a second`;
    },
  },
  {
    name: "the first proof of the demo",
    async run({ browser, url }) {
      const began = Date.now();
      const seen = await Seen.open(browser, url, { proof: true });
      await seen.proved(1);
      const first = Date.now() - began;
      await seen.page.waitForFunction(() => !globalThis.wellproofSeen.busy(), null, { timeout: 180_000 });
      const whole = Date.now() - began;
      await seen.page.locator(".proofstrip", { hasText: "Proven" }).waitFor();
      await seen.close();
      return `first word after ${(first / 1000).toFixed(1)} s, 64 draws after ${(whole / 1000).toFixed(1)} s`;
    },
  },
  {
    name: "after one visit every view works with the server gone",
    async run({ browser, dist }) {
      const { server, url } = await serve(dist);
      const seen = await Seen.open(browser, url, { proof: true });
      await seen.page.evaluate(() => navigator.serviceWorker.ready);
      await seen.page.waitForFunction(async () => {
        for (const name of await caches.keys()) if (await (await caches.open(name)).match("./core.wasm")) return true;
        return false;
      });
      server.closeAllConnections();
      await new Promise((done) => server.close(done));
      await seen.page.reload();
      await seen.live();
      await seen.proved(1);
      for (const tab of tabs) await seen.tab(tab);
      await seen.page.reload();
      await seen.live();
      await seen.close();
    },
  },
  {
    name: "it opens as a file, without a server",
    async run({ browser, dist }) {
      const seen = await Seen.open(browser, pathToFileURL(`${dist}/index.html`).href, { proof: true });
      await seen.proved(1);
      await seen.page.locator("#house").fill("60");
      await seen.close();
    },
  },
  {
    name: "nothing is asked of any other place",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url);
      const asked = [];
      seen.page.context().on("request", (request) => asked.push(request.url()));
      await seen.page.reload();
      await seen.live();
      for (const tab of tabs) await seen.tab(tab);
      assert.deepEqual(asked.filter((each) => !each.startsWith(url) && !each.startsWith("blob:") && !each.startsWith("data:")), []);
      await seen.close();
    },
  },
];
