import assert from "node:assert/strict";
import { Seen } from "./page.mjs";

const hostile = `[site]
name = "<script>globalThis.hit = 1</script><img src=x onerror='globalThis.hit=1'>"

[well]
static_level = "60 ft"
test_flow = "8 gpm"
test_level = "110 ft"
depht = "<b>200 ft</b>"

[pump]
rated_flow = "10 gpm"
setting = "140 ft"

[motor]
power = "1 hp"

[demand]
outlet_pressure = "40 psi"
`;

async function import_(seen, files) {
  await seen.page.locator("input[type=file]").setInputFiles(files.map(({ name, text }) => ({ name, mimeType: "text/plain", buffer: Buffer.from(text) })));
}

export const tests = [
  {
    name: "a site is entered in steps, as a range, and what is left out is assumed in words",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url);
      await seen.page.locator(".menu summary").click();
      await seen.page.locator("button", { hasText: "New site" }).click();
      await seen.page.locator('[data-key="well.static_level"]').waitFor();
      const field = seen.page.locator('[data-key="well.static_level"]');
      await field.locator("select").selectOption("between");
      await field.locator("input").nth(0).fill("50");
      await field.locator("input").nth(1).fill("70");
      await field.locator("input").nth(1).blur();
      await seen.page.waitForFunction(() => /static_level\s*=\s*"50 \.\. 70 ft"/.test(document.querySelector(".thefile textarea").value));
      assert.ok((await seen.page.locator(".field.assumed").count()) > 0);
      assert.match(await seen.page.locator(".field.assumed").first().innerText(), /assumed/);
      await seen.page.evaluate(() => scrollTo(0, 0));
      await seen.page.locator(".steps button").nth(3).click();
      await seen.page.locator('[data-key="demand.peak_draw"]').waitFor();
      await seen.close();
    },
  },
  {
    name: "units and language change everywhere",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url);
      await seen.page.locator(".menu summary").click();
      await seen.page.locator(".sheetmenu select").nth(1).selectOption("metric");
      await seen.page.locator(".gauges", { hasText: "kPa" }).waitFor();
      await seen.page.locator(".sheetmenu select").nth(0).selectOption("es");
      await seen.page.locator(".gauges", { hasText: "Presión" }).waitFor();
      assert.equal(await seen.page.evaluate(() => document.documentElement.lang), "es");
      await seen.page.reload();
      await seen.live();
      assert.match(await seen.page.locator(".gauges").innerText(), /kPa/);
      await seen.close();
    },
  },
  {
    name: "a site with a script for a name does nothing, and a key that is wrong is found with its line",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url, { proof: true });
      await import_(seen, [{ name: "<b>hostile.toml", text: hostile }]);
      await seen.tab("site");
      await seen.page.locator(".findings").waitFor();
      const says = await seen.page.locator(".findings").innerText();
      assert.match(says, /line 8:/);
      assert.match(says, /depth/);
      await seen.page.locator(".thefile summary").click();
      await seen.page.locator("textarea").fill(hostile.replace(/^depht.*\n/m, ""));
      await seen.page.locator("button", { hasText: "Take it over" }).click();
      await seen.live();
      for (const name of ["well", "settings", "visit", "history", "exercises"]) await seen.tab(name);
      await seen.proved(1);
      assert.equal(await seen.page.evaluate(() => globalThis.hit), undefined);
      assert.ok((await seen.page.locator(".pick select").innerText()).includes("<script>"));
      await seen.close();
    },
  },
  {
    name: "files that are no site get findings, and one that is too large is told so",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url);
      for (const text of ["\u0000\u0001\u0002", "[[[[", "x".repeat(200_000), '{"json": true}', "[site]\nname = \"a\"\n"]) {
        await import_(seen, [{ name: "odd.toml", text }]);
        await seen.tab("site");
        await seen.page.locator(".findings").waitFor();
      }
      await import_(seen, [{ name: "large.toml", text: "x".repeat((1 << 20) + 1) }]);
      await seen.page.locator(".saidbox", { hasText: "larger than a megabyte" }).waitFor();
      await seen.close();
    },
  },
  {
    name: "what another program left in the browser's storage does no harm",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url);
      await seen.page.evaluate(() => {
        localStorage.setItem("wellproof.sites", '[{"id": 3}, null, "x"]');
        localStorage.setItem("wellproof.open", '"none such"');
      });
      await seen.page.reload();
      await seen.live();
      await seen.close();
    },
  },
];
