// A drive card in the page: chosen, pasted, refused; what is entered, what the drive lacks, and that run and proof are
// those of the drive.
import assert from "node:assert/strict";
import { mkdirSync, readFileSync } from "node:fs";
import { Seen } from "./page.mjs";

const example = (name) => readFileSync(new URL(`../../../examples/${name}`, import.meta.url), "utf8");

export const tests = [
  {
    name: "card: an example is chosen, its labels and rounded values stand there, and the drive runs by them",
    async run({ browser, url, shots }) {
      const seen = await Seen.open(browser, url, { proof: true });
      await seen.tab("settings");
      const derived = await seen.page.locator('[id="set-pressure.wake_drop"]').inputValue();
      await seen.page.locator("#card").selectOption({ label: "Plain bench drive (example)" });
      await seen.page.locator(".ondrive").waitFor();
      const says = await seen.page.locator(".ondrive").innerText();
      for (const part of [/Plain bench drive/, /Start again at/, /page 2, line 2/, /\d+ psi/, /sensor\.trim/]) assert.match(says, part);
      // The drive takes whole psi, and shows a drop as the pressure it leads to: target and drop are on its grid.
      const shown = (label) => seen.page.locator(".ondrive tr", { has: seen.page.locator("th", { hasText: label }) }).locator(".value").innerText();
      const [target, again] = [parseFloat(await shown("House pressure")), parseFloat(await shown("Start again at"))];
      assert.equal(target, Math.round(target));
      assert.equal(again, Math.round(again));
      assert.ok(Math.abs(parseFloat(await seen.page.locator('[id="set-pressure.wake_drop"]').inputValue()) - (target - again)) < 0.06, `${derived} became ${target} − ${again}`);
      // The run that somebody stands in is under the same settings, and the proof is of them.
      await seen.page.waitForFunction((psi) => Math.abs(globalThis.wellproofSeen.inForce()["pressure.target"] / 6894.757 - psi) < 0.01, target);
      await seen.proved(2);
      // A press moves by the drive's own step.
      await seen.page.getByRole("button", { name: "Pressure to hold: more" }).click();
      await seen.page.waitForFunction((psi) => document.querySelector(".ondrive")?.textContent.includes(`${psi} psi`), target + 1);
      assert.equal(parseFloat(await shown("House pressure")), target + 1);
      assert.deepEqual(await seen.axe(), [], "axe");
      for (const width of [1920, 768, 360]) {
        await seen.page.setViewportSize({ width, height: 1000 });
        await seen.page.waitForTimeout(300);
        assert.deepEqual(await seen.overflow(), [], `fits at ${width}`);
        if (shots) {
          mkdirSync(shots, { recursive: true });
          await seen.page.evaluate(() => scrollTo(0, 0));
          await seen.page.locator(".panel").screenshot({ path: `${shots}/page_card_${width}.png` });
        }
      }
      await seen.page.setViewportSize({ width: 1366, height: 900 });
      await seen.page.locator("#card").selectOption({ label: "no card" });
      await seen.page.locator(".ondrive").waitFor({ state: "detached" });
      await seen.close();
    },
  },
  {
    name: "card: one that looks at power runs and is drawn in watts, and the visit's sheet is in the words of another",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url);
      await seen.tab("settings");
      await seen.page.locator("#card").selectOption({ index: 2 });
      await seen.page.locator(".ondrive").waitFor();
      await seen.page.locator('[id="set-dry_run.power_below"]').waitFor();
      assert.equal(await seen.page.locator('[id="set-dry_run.amps_below"]').count(), 0);
      await seen.tab("well");
      await seen.page.locator("#house").fill("60");
      await seen.mode("holding");
      await seen.page.locator(".map h2", { hasText: "Power over speed" }).waitFor();
      assert.match(await seen.page.locator(".map .threshold.dry").textContent(), / W$/);
      assert.equal(await seen.page.locator(".map .threshold.sleep").count(), 0, "it sleeps by a nudge");
      // A drive that nudges is simulated sample by sample: the sheet is made for the other, which takes less time.
      await seen.tab("settings");
      await seen.page.locator("#card").selectOption({ index: 1 });
      await seen.page.locator(".ondrive h2", { hasText: "Plain" }).waitFor();
      const label = await seen.page.locator(".ondrive tbody th").first().innerText();
      await seen.tab("visit");
      await seen.page.locator("button", { hasText: "Make the sheet" }).click();
      await seen.page.locator(".visitsheet .entries th", { hasText: label }).first().waitFor({ timeout: 300_000 });
      await seen.close();
    },
  },
  {
    name: "card: one that is pasted with faults is refused with their lines, mended it is taken and kept",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url);
      await seen.tab("settings");
      await seen.page.locator("summary", { hasText: "Write or paste a card" }).click();
      const box = seen.page.getByLabel("Write or paste a card");
      const mine = example("card_plain.toml").replace("Plain bench drive", "<script>alert(1)</script>");
      await box.fill(mine.replace('unit  = "psi"', 'unit  = "furlongs"'));
      await seen.page.locator(".cardchoice button", { hasText: "Take it over" }).click();
      await seen.page.locator(".cardchoice .findings", { hasText: "furlongs" }).waitFor();
      assert.equal(await seen.page.locator(".ondrive").count(), 0);
      await box.fill(mine);
      await seen.page.locator(".cardchoice button", { hasText: "Take it over" }).click();
      await seen.page.locator(".ondrive h2", { hasText: "<script>" }).waitFor();
      await seen.page.reload();
      await seen.live();
      await seen.tab("settings");
      await seen.page.locator("#card option", { hasText: "<script>" }).waitFor({ state: "attached" });
      // A card that comes in by the menu as a file is a card for the open site, and no site.
      const sites = await seen.page.locator(".pick option").count();
      await seen.page.locator('.sheetmenu input[type="file"]').setInputFiles({ name: "power.toml", mimeType: "text/plain", buffer: Buffer.from(example("card_power.toml")) });
      await seen.page.locator(".ondrive").waitFor();
      assert.equal(await seen.page.locator(".pick option").count(), sites);
      await seen.close();
    },
  },
  {
    name: "card: in Spanish, with the cautions in Spanish",
    async run({ browser, url, shots }) {
      const seen = await Seen.open(browser, url, { language: "es", width: 360, height: 760 });
      await seen.tab("settings");
      await seen.page.locator("#card").selectOption({ index: 1 });
      await seen.page.locator(".ondrive", { hasText: "Lo que este variador no tiene" }).waitFor();
      const cautions = await seen.page.locator(".cautions li").allInnerTexts();
      assert.ok(cautions.length >= 6);
      assert.match(cautions.join(" "), /condensadores del variador siguen cargados/);
      const english = await seen.page.locator(".cautions li > span[lang=en]").allInnerTexts();
      assert.deepEqual(english, [], "every caution has Spanish words");
      assert.deepEqual(await seen.overflow(), [], "it fits");
      assert.deepEqual(await seen.axe(), [], "axe");
      if (shots) {
        mkdirSync(shots, { recursive: true });
        for (const width of [360, 768, 1920]) {
          await seen.page.setViewportSize({ width, height: 1000 });
          await seen.page.waitForTimeout(300);
          await seen.page.evaluate(() => scrollTo(0, 0));
          await seen.page.locator(".panel").screenshot({ path: `${shots}/page_card_es_${width}.png` });
        }
      }
      await seen.close();
    },
  },
];
