// On the Spanish page the core speaks Spanish too (src/words/translated.ts): whatever it says of the demo sites, nothing is
// left in English.
import assert from "node:assert/strict";
import { Seen } from "./page.mjs";

const long = { timeout: 400_000 };

/// What is marked as English, view by view.
async function english(seen) {
  return seen.page.evaluate(() => [...document.querySelectorAll('main span[lang="en"]')].map((each) => each.textContent));
}

const sites = [
  ["shallow_strong.toml", "us"],
  ["deep_weak.toml", "metric"],
];

export const tests = sites.map(([site, units]) => ({
  name: `all that the core says of ${site} is Spanish, in ${units} units`,
  async run({ browser, url, shots }) {
    const seen = await Seen.open(browser, url, { language: "es", width: 768, height: 1000 });
    await seen.page.locator(".menu summary").click();
    await seen.page.locator(".sheetmenu select").nth(1).selectOption(units);
    await seen.page.locator(".pick select").selectOption(site);
    await seen.live();
    await seen.tab("settings");
    await seen.page.waitForFunction(() => document.querySelectorAll(".panel h2").length > 3 && !globalThis.wellproofSeen.busy(), null, long);
    assert.deepEqual(await english(seen), [], "settings and proof");
    assert.equal(await seen.page.locator(".in-english:visible").count(), 0, "and it is not said to be English");
    if (shots) await seen.page.locator(".panel").screenshot({ path: `${shots}/page_settings_es_${units}.png` });
    await seen.tab("site");
    for (let step = 0; step < 5; ++step) {
      await seen.page.locator(".steps button").nth(step).click();
      await seen.page.locator(".field").first().waitFor();
      assert.deepEqual(await english(seen), [], `site, step ${step + 1}`);
    }
    await seen.tab("visit");
    await seen.page.locator("button", { hasText: "Hacer la hoja" }).click();
    await seen.page.locator(".visitsheet .test .boxes input").first().waitFor(long);
    assert.deepEqual(await english(seen), [], "visit");
    if (shots) await seen.page.locator(".panel").screenshot({ path: `${shots}/page_visit_es_${units}.png` });
    await seen.tab("history");
    await seen.page.locator("button", { hasText: "Poner un ejemplo" }).click();
    await seen.page.locator("button.strong", { hasText: "Buscar las causas" }).click();
    await seen.page.locator(".cause").first().waitFor(long);
    assert.deepEqual(await english(seen), [], "stops");
    await seen.close();
  },
}));
