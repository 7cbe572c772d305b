import assert from "node:assert/strict";
import { Seen } from "./page.mjs";

async function begin(seen, title) {
  await seen.tab("exercises");
  await seen.page.locator(".exercise", { hasText: title }).locator("button", { hasText: "Begin" }).click();
  await seen.page.locator(".exercise.running", { hasText: title }).waitFor();
}

async function check(seen, says) {
  await seen.page.locator("button", { hasText: "Check my answer" }).click();
  await seen.page.locator(".outcome", { hasText: says }).waitFor({ timeout: 120_000 });
}

async function set(seen, key, text) {
  await seen.tab("settings");
  const box = seen.page.locator(`[id="set-${key}"]`);
  await box.waitFor();
  await box.fill(text);
  await box.press("Enter");
  await seen.page.waitForFunction(([id, wanted]) => document.getElementById(id)?.value === wanted, [`set-${key}`, text]);
  await seen.tab("exercises");
}

export const tests = [
  {
    name: "make this well sleep: not as it stands, right when the sleep speed is right",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url);
      await begin(seen, "Make this well sleep");
      await seen.page.locator("button", { hasText: "A hint" }).click();
      await seen.page.locator(".hint").waitFor();
      await check(seen, "Not yet.");
      assert.match(await seen.page.locator(".outcome").innerText(), /quiet house/i);
      await seen.tab("settings");
      await seen.page.locator(".setting.given button.small", { hasText: "Back to derived" }).click();
      await seen.page.waitForFunction(() => document.querySelectorAll(".setting.given").length === 0);
      await seen.tab("exercises");
      await check(seen, "Right.");
      await seen.close();
    },
  },
  {
    name: "the trough: twenty minutes are too few",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url);
      await begin(seen, "It stops while the trough fills");
      await check(seen, "Not yet.");
      await set(seen, "long_run.limit", "50 min");
      await check(seen, "Right.");
      await seen.close();
    },
  },
  {
    name: "the night: only the cause that does what the owner says is right",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url);
      await begin(seen, "Find why it stops at night");
      for (const cause of ["check", "tank", "volts"]) {
        await seen.page.locator(`input[value=${cause}]`).check();
        await check(seen, "Not yet.");
      }
      await seen.page.locator("input[value=yield]").check();
      await check(seen, "Right.");
      assert.match(await seen.page.locator(".outcome").innerText(), /stops: line shut/);
      await seen.close();
    },
  },
  {
    name: "the forgotten valve: stops by itself once the guard can see it",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url);
      await begin(seen, "Shut the valve and stay whole");
      await check(seen, "Not yet.");
      await set(seen, "closed.amps_below", "4.3 A");
      await check(seen, "Right.");
      await seen.close();
    },
  },
];
