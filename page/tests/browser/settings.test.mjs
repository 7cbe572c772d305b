import assert from "node:assert/strict";
import { Seen } from "./page.mjs";

export const tests = [
  {
    name: "a setting is moved: the proof says what breaks, and back to derived it holds again",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url, { proof: true });
      await seen.tab("settings");
      await seen.proved(2);
      const box = seen.page.locator('[id="set-sleep.speed_below"]');
      const derived = await box.inputValue();
      await box.fill("30");
      await box.press("Enter");
      await seen.page.locator(".proofstrip.fails").waitFor();
      assert.match(await seen.page.locator(".proofstrip").innerText(), /quiet house|morning|least draw/i);
      assert.equal(await box.inputValue(), "30 Hz");
      assert.match(await seen.page.locator(".setting.given").innerText(), /yours/);
      await seen.page.locator(".setting.given button.small", { hasText: "Back to derived" }).click();
      await seen.page.locator(".proofstrip:not(.fails)").waitFor();
      await seen.page.waitForFunction((text) => document.getElementById("set-sleep.speed_below").value === text, derived);
      await seen.proved(2);
      assert.equal(await seen.page.locator(".proofstrip.fails").count(), 0);
      await seen.close();
    },
  },
  {
    name: "a press on + is a step, and what contradicts itself is refused in words",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url, { proof: true });
      await seen.tab("settings");
      await seen.proved(1);
      const box = seen.page.locator('[id="set-pressure.target"]');
      const before = parseFloat(await box.inputValue());
      await seen.page.getByRole("button", { name: "Pressure to hold: more" }).click();
      await seen.page.waitForFunction((from) => parseFloat(document.getElementById("set-pressure.target").value) > from, before);
      await box.fill("50 furlongs");
      await box.press("Enter");
      await seen.page.locator(".findings").waitFor();
      assert.match(await seen.page.locator(".findings").innerText(), /expected/);
      await seen.close();
    },
  },
  {
    name: "a breaking scenario is watched as it happens",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url, { proof: true });
      await seen.tab("settings");
      await seen.proved(1);
      await seen.page.locator(".scenarios button", { hasText: "Watch it happen" }).first().click();
      await seen.page.locator(".said", { hasText: "You are watching" }).waitFor();
      await seen.pace(60);
      await seen.page.waitForFunction(() => globalThis.wellproofSeen.told()?.now.t > 30);
      await seen.close();
    },
  },
];
