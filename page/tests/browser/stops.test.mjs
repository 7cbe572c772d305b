// The path of a call: stops, what is noticed, causes, a check answered, back again, a share changed; found nonsense.
import assert from "node:assert/strict";
import { mkdirSync } from "node:fs";
import { Seen } from "./page.mjs";

const long = { timeout: 400_000 };

async function explained(seen) {
  await seen.page.locator("button.strong", { hasText: /Find the causes|Buscar las causas/ }).click();
  await seen.page.locator(".cause").first().waitFor(long);
}

const idle = (seen) => seen.page.waitForFunction(() => !document.querySelector(".lead .progress"), null, long);
const topShare = async (seen) => (await seen.page.locator(".cause .head").allInnerTexts()).join(" | ").replace(/\s+/g, " ");

export const tests = [
  {
    name: "stops: nonsense among them is found with its line",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url);
      await seen.tab("history");
      await seen.page.locator("#stops").fill("yesterday 7pm: dry\nyesterday 8pm: the moon was full\n");
      await seen.page.locator("button", { hasText: "Find the causes" }).click();
      await seen.page.locator(".findings", { hasText: "line 2" }).waitFor(long);
      await seen.page.locator("#stops").fill("");
      await seen.page.locator("button", { hasText: "Find the causes" }).click();
      await seen.page.locator(".findings", { hasText: "Enter at least one stop" }).waitFor();
      await seen.close();
    },
  },
  {
    name: "stops: causes are ranked with their error, a check is answered and taken back, a share is changed",
    async run({ browser, url, shots }) {
      const seen = await Seen.open(browser, url);
      await seen.page.locator(".pick select").selectOption("deep_weak.toml");
      await seen.live();
      await seen.tab("history");
      await seen.page.locator("button", { hasText: "Put an example in" }).click();
      await seen.page.locator("summary", { hasText: "What is noticed" }).click();
      await seen.page.getByRole("group", { name: "Air comes out of the taps" }).getByRole("button", { name: "yes" }).click();
      await seen.page.getByRole("group", { name: "There is sand in the water" }).getByRole("button", { name: "no" }).click();
      await seen.page.locator("summary", { hasText: "Readings now" }).click();
      await seen.page.getByLabel("Taps, meanwhile").selectOption("shut");
      await seen.page.getByLabel(/Pressure on the display/).fill("58");
      await seen.page.locator("summary", { hasText: "What changed lately" }).click();
      await seen.page.getByRole("button", { name: "a new lawn" }).click();
      const began = Date.now();
      await explained(seen);
      const first_ms = Date.now() - began;
      const main = seen.page.locator("main");
      for (const part of [/±/, /4 dry run/, /Before anything was told/, /What to do:/, /new lawn.*times higher/, /then the likeliest is/, /Would a setting have avoided it\?/, /A ranking is no finding/]) {
        assert.match((await main.innerText()).replace(/\s+/g, " "), part);
      }
      // Four stops on two days and the rests after them.
      assert.equal(await seen.page.locator(".stopschart > svg .stopmark").count(), 4);
      assert.equal(await seen.page.locator(".stopschart > svg .rests").count(), 4);
      const before = await topShare(seen);
      if (shots) {
        mkdirSync(shots, { recursive: true });
        for (const width of [360, 768, 1920]) {
          await seen.page.setViewportSize({ width, height: 1000 });
          await seen.page.waitForTimeout(300);
          assert.deepEqual(await seen.overflow(), [], `stops fit at ${width}`);
          await seen.page.locator(".panel").screenshot({ path: `${shots}/page_stops_${width}.png` });
        }
        await seen.page.setViewportSize({ width: 1366, height: 900 });
      }
      assert.deepEqual(await seen.axe(), [], "axe on the causes");
      const question = seen.page.locator(".nextcheck .test").first();
      const answered = Date.now();
      await question.locator(".answers button").last().click();
      await seen.page.locator(".nextcheck", { hasText: "Answered so far" }).waitFor(long);
      await idle(seen);
      const again_ms = Date.now() - answered;
      assert.notEqual(await topShare(seen), before, "the answer moves the ranking");
      await seen.page.getByRole("button", { name: "Take back" }).click();
      await seen.page.waitForFunction(() => !document.querySelector(".nextcheck")?.textContent?.includes("Answered so far"), null, long);
      await idle(seen);
      assert.equal(await topShare(seen), before, "taken back it stands as before");
      await seen.page.locator("summary", { hasText: "How often each is the cause" }).click();
      await seen.page.getByLabel("A line has burst").fill("60");
      await seen.page.getByRole("button", { name: "Rank anew" }).click();
      await idle(seen);
      assert.notEqual(await topShare(seen), before, "a share said otherwise moves the ranking");
      await seen.close();
      return `causes after ${(first_ms / 1000).toFixed(1)} s, an answer ranked in ${(again_ms / 1000).toFixed(1)} s`;
    },
  },
  {
    name: "stops: in Spanish a form writes them, and cautions and causes are Spanish",
    async run({ browser, url, shots }) {
      const seen = await Seen.open(browser, url, { language: "es", width: 360, height: 760 });
      await seen.tab("history");
      await seen.page.getByLabel("Clase de paro").selectOption("dry_run");
      await seen.page.getByLabel("Cuándo").fill("2026-08-13T21:40");
      await seen.page.getByRole("button", { name: "Agregar este paro" }).click();
      assert.match(await seen.page.locator("#stops").inputValue(), /2026-08-13 21:40: dry run/);
      await seen.page.locator("#stops").fill(`now: 2026-08-14 07:00\n${await seen.page.locator("#stops").inputValue()}`);
      await explained(seen);
      const says = await seen.page.locator("main").innerText();
      assert.match(says, /Una lista ordenada no es un hallazgo/);
      assert.match(await seen.page.locator(".cause h3").first().innerText(), /^(El|La|Se|Una|Los|Ninguna)/);
      assert.deepEqual(await seen.overflow(), [], "it fits");
      assert.deepEqual(await seen.axe(), [], "axe");
      if (shots) {
        for (const width of [360, 768, 1920]) {
          await seen.page.setViewportSize({ width, height: 1000 });
          await seen.page.waitForTimeout(300);
          await seen.page.locator(".panel").screenshot({ path: `${shots}/page_stops_es_${width}.png` });
        }
      }
      await seen.close();
    },
  },
];
