import assert from "node:assert/strict";
import { Seen } from "./page.mjs";

// The readings of examples/shallow_strong_readings.toml.
const round = [
  ["rest", { level: "44.3", volts: "244.8" }],
  ["asleep", { gauge: "49.8", drive_pressure: "48.8" }],
  ["shut", { gauge: "58.6", drive_pressure: "59.1", speed: "38.2", current: "3.08" }],
];
const place = ["gauge", "drive_pressure", "speed", "current", "volts", "flow", "level"];

export const tests = [
  {
    name: "readings are entered and fitted, and the site gets narrower",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url);
      await seen.tab("visit");
      for (const [i, [condition, values]] of round.entries()) {
        await seen.page.locator("button", { hasText: "Add a reading" }).click();
        const row = seen.page.locator(".reading").nth(i);
        await row.locator("select").selectOption(condition);
        for (const [name, text] of Object.entries(values)) await row.locator(".boxes input").nth(place.indexOf(name)).fill(text);
      }
      await seen.page.getByRole("button", { name: "Fit", exact: true }).click();
      await seen.page.locator(".outcome table").waitFor({ timeout: 120_000 });
      assert.match(await seen.page.locator(".outcome").innerText(), /settings/i);
      await seen.page.locator("button", { hasText: "Take the narrower site" }).click();
      await seen.page.waitForFunction(() => document.querySelectorAll(".pick option").length > 2);
      await seen.close();
    },
  },
  {
    name: "a fit without readings is told so, and an odd figure gets a finding",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url);
      await seen.tab("visit");
      await seen.page.getByRole("button", { name: "Fit", exact: true }).click();
      await seen.page.locator(".findings", { hasText: "at least one reading" }).waitFor();
      await seen.page.locator("button", { hasText: "Add a reading" }).click();
      await seen.page.locator(".reading .boxes input").first().fill("twelve parrots");
      await seen.page.getByRole("button", { name: "Fit", exact: true }).click();
      await seen.page.locator(".findings", { hasText: "parrots" }).waitFor();
      await seen.close();
    },
  },
  {
    name: "the visit's sheet has tests with bands, and a figure is held against its band",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url);
      await seen.tab("visit");
      await seen.page.locator("button", { hasText: "Make the sheet" }).click();
      await seen.page.locator(".visitsheet .test .boxes input").first().waitFor({ timeout: 180_000 });
      await seen.page.locator(".visitsheet .tick input").first().check();
      await seen.page.locator(".visitsheet .boxes input").first().fill("99999");
      await seen.page.locator(".visitsheet", { hasText: "not as expected" }).waitFor();
      await seen.close();
    },
  },
];
