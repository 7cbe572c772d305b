// What the browser tests share: one Chromium with nothing of the network in it, pages, and the figures that the page
// shows to tests.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { chromium } from "playwright-core";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
export const quiet = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];
export const tabs = ["well", "settings", "site", "visit", "history", "exercises"];

export async function browserOf() {
  return chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: quiet });
}

export class Seen {
  errors = [];
  constructor(page) {
    this.page = page;
    page.setDefaultTimeout(60_000);
    page.on("pageerror", (error) => this.errors.push(String(error)));
    page.on("dialog", (dialog) => {
      this.errors.push(`a dialog: ${dialog.message()}`);
      void dialog.dismiss();
    });
  }

  static async open(browser, url, { width = 1366, height = 900, context = {}, language = "en", proof = false } = {}) {
    const made = await browser.newContext({ viewport: { width, height }, serviceWorkers: "allow", ...context });
    await made.addInitScript((tongue) => {
      if (!localStorage.getItem("wellproof.language")) localStorage.setItem("wellproof.language", JSON.stringify(tongue));
    }, language);
    const seen = new Seen(await made.newPage());
    await seen.page.goto(url);
    await seen.live();
    // A proof takes all cores; a test that is not about it does without.
    if (!proof) await seen.page.locator(".proofstrip button", { hasText: /Stop|Parar/ }).click();
    return seen;
  }

  async close() {
    await this.page.context().close();
    assert.deepEqual(this.errors, [], "no error in the page");
  }

  live() {
    return this.page.waitForFunction(() => globalThis.wellproofSeen?.told());
  }
  told() {
    return this.page.evaluate(() => globalThis.wellproofSeen.told());
  }
  mode(mode) {
    return this.page.waitForFunction((wanted) => globalThis.wellproofSeen.told()?.words.mode === wanted, mode);
  }
  tab(name) {
    return this.page.locator(".tabs button").nth(tabs.indexOf(name)).click();
  }
  pace(times) {
    return this.page.locator(".pace button", { hasText: times === 0 ? "❚❚" : `${times}×` }).first().click();
  }
  /// Draws that were proved since the settings changed last.
  proved(draws) {
    return this.page.waitForFunction((wanted) => (globalThis.wellproofSeen.soFar()?.done ?? 0) >= wanted, draws);
  }
  async axe() {
    await this.page.evaluate(axe);
    const found = await this.page.evaluate(() => globalThis.axe.run(document, { resultTypes: ["violations"] }));
    return found.violations.map((each) => `${each.id}: ${each.nodes.map((node) => node.target.join(" ")).slice(0, 3).join(", ")}`);
  }
  /// What stands out of the page to the right.
  overflow() {
    return this.page.evaluate(() => {
      const wide = document.documentElement.clientWidth;
      return [...document.querySelectorAll("body *")]
        .filter((each) => !each.closest("svg *") && !each.closest(".unseen, .skip, .scroll") && each.getBoundingClientRect().right > wide + 1 && getComputedStyle(each).visibility !== "hidden" && each.getClientRects().length)
        .slice(0, 4)
        .map((each) => `${each.tagName}.${each.className}`);
    });
  }
}
