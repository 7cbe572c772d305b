import assert from "node:assert/strict";
import { Seen } from "./page.mjs";

export const tests = [
  {
    name: "a tap is opened: the pump wakes and holds, and the words say so",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url);
      assert.match(await seen.page.locator(".said .mode").innerText(), /asleep/);
      await seen.page.locator("#house").fill("60");
      await seen.pace(10);
      await seen.mode("holding");
      await seen.page.waitForFunction(() => globalThis.wellproofSeen.told().now.speed_hz > 30);
      assert.match(await seen.page.locator(".said .mode").innerText(), /holding/);
      assert.ok((await seen.told()).now.drawn_m3_s > 1e-4);
      assert.match(await seen.page.locator(".happened").innerText(), /wakes/);
      await seen.page.locator(".switch", { hasText: "House valve" }).click();
      await seen.page.waitForFunction(() => globalThis.wellproofSeen.told().now.drawn_m3_s < 1e-9);
      await seen.close();
    },
  },
  {
    name: "the water is dragged below the pump: it stops as dry and says how long it rests",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url);
      await seen.page.locator("#house").fill("100");
      await seen.pace(10);
      await seen.mode("holding");
      const handle = await seen.page.locator(".handle .grip").boundingBox();
      const box = await seen.page.locator("svg.section").boundingBox();
      await seen.page.mouse.move(handle.x + handle.width / 2, handle.y + handle.height / 2);
      await seen.page.mouse.down();
      await seen.page.mouse.move(handle.x + handle.width / 2, box.y + box.height - 8, { steps: 8 });
      await seen.page.mouse.up();
      const dragged = await seen.told();
      assert.ok(dragged.shift_m > 10, `dragged by ${dragged.shift_m} m`);
      await seen.page.locator("#gives").fill("0");
      await seen.pace(60);
      await seen.mode("resting");
      await seen.pace(0);
      assert.match(await seen.page.locator(".said .mode").innerText(), /resting: dry, \d+ (min|s) left/);
      await seen.page.locator("button", { hasText: "Reset the drive" }).click();
      await seen.close();
    },
  },
  {
    name: "the water's handle goes by arrow keys, and all is reached by keyboard",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url);
      await seen.page.locator(".handle").focus();
      const before = await seen.told();
      for (let i = 0; i < 3; ++i) await seen.page.keyboard.press("ArrowDown");
      await seen.page.waitForFunction((from) => Math.abs(globalThis.wellproofSeen.told().shift_m - from) > 0.3, before.shift_m);
      await seen.page.keyboard.press("Home");
      await seen.page.evaluate(() => document.body.focus());
      const reached = new Set();
      for (let i = 0; i < 40; ++i) {
        await seen.page.keyboard.press("Tab");
        reached.add(await seen.page.evaluate(() => `${document.activeElement.className}|${document.activeElement.id}|${document.activeElement.tagName}`));
      }
      for (const wanted of ["skip||A", "house|INPUT", "switch||BUTTON"]) {
        assert.ok([...reached].some((each) => each.includes(wanted)), `${wanted} in ${[...reached].join(" ")}`);
      }
      await seen.close();
    },
  },
  {
    name: "time runs on to the next event, and a paused well stands still",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url);
      await seen.page.locator(".switch", { hasText: "Basin tap" }).click();
      await seen.page.locator("button", { hasText: "To the next event" }).click();
      await seen.page.waitForFunction(() => document.querySelectorAll(".happened li").length > 0);
      await seen.pace(0);
      await seen.page.waitForTimeout(300);
      const one = (await seen.told()).now.t;
      await seen.page.waitForTimeout(300);
      assert.equal((await seen.told()).now.t, one);
      await seen.close();
    },
  },
  {
    name: "a term is explained one tap away",
    async run({ browser, url }) {
      const seen = await Seen.open(browser, url);
      await seen.page.locator(".map .term").click();
      await seen.page.locator("dialog[open]").getByText("One possible truth").waitFor();
      await seen.page.keyboard.press("Escape");
      assert.equal(await seen.page.locator("dialog[open]").count(), 0);
      await seen.close();
    },
  },
];
