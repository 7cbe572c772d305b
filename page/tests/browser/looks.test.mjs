// Every view at a telephone's, a tablet's and a projector's width: nothing stands out, axe finds nothing, pictures.
import assert from "node:assert/strict";
import { mkdirSync } from "node:fs";
import { Seen, tabs } from "./page.mjs";

const widths = [
  [360, 760],
  [768, 1024],
  [1920, 1080],
];

export const tests = [
  ...widths.map(([width, height]) => ({
    name: `at ${width} px every view fits and axe finds nothing`,
    async run({ browser, url, shots }) {
      const seen = await Seen.open(browser, url, { proof: true, width, height });
      await seen.page.locator("#house").fill("60");
      await seen.pace(10);
      await seen.mode("holding");
      await seen.proved(shots ? 4 : 1);
      if (shots) await seen.page.waitForTimeout(4000);
      await seen.pace(1);
      for (const tab of tabs) {
        await seen.tab(tab);
        await seen.page.waitForTimeout(250);
        assert.deepEqual(await seen.overflow(), [], `${tab} fits`);
        assert.deepEqual(await seen.axe(), [], `axe on ${tab}`);
        if (shots && ["well", "settings", "site"].includes(tab)) {
          mkdirSync(shots, { recursive: true });
          await seen.page.evaluate(() => scrollTo(0, 0));
          await seen.page.screenshot({ path: `${shots}/page_${tab}_${width}.png` });
        }
      }
      await seen.close();
    },
  })),
  {
    name: "in Spanish every view fits at 360 px, in sunlight and for a projector too",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url, { proof: true, width: 360, height: 760, language: "es" });
      await seen.proved(1);
      await seen.page.locator(".menu summary").click();
      await seen.page.locator("button", { hasText: "Proyector" }).click();
      await seen.page.locator("button", { hasText: "Luz de sol" }).click();
      await seen.page.locator(".menu summary").click();
      for (const tab of tabs) {
        await seen.tab(tab);
        await seen.page.waitForTimeout(250);
        assert.deepEqual(await seen.overflow(), [], `${tab} fits`);
        assert.deepEqual(await seen.axe(), [], `axe on ${tab}`);
      }
      assert.match(await seen.page.locator(".tabs").innerText(), /Pozo/);
      await seen.close();
    },
  },
  {
    name: "a print has the settings and no buttons",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url, { proof: true });
      await seen.tab("settings");
      await seen.proved(1);
      await seen.page.emulateMedia({ media: "print" });
      assert.equal(await seen.page.locator(".tabs").isVisible(), false);
      assert.equal(await seen.page.locator(".dial button").first().isVisible(), false);
      assert.equal(await seen.page.locator('[id="set-pressure.target"]').isVisible(), true);
      await seen.close();
    },
  },
];
