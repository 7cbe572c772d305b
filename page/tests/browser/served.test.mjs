// The page as the program serves it, with the book behind it.
import assert from "node:assert/strict";
import { execFileSync, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Seen } from "./page.mjs";

export const tests = [
  {
    name: "served by the program: the page runs under its policy and writes into the book",
    async run({ browser, program }) {
      if (!program) return { skipped: "no program given (--program)" };
      const folder = mkdtempSync(join(tmpdir(), "wellproof-page-"));
      const book = join(folder, "book.sqlite");
      const serving = spawn(program, ["page", "--port", "0", "--book", book], { stdio: ["ignore", "pipe", "pipe"] });
      try {
        const url = await new Promise((done, failed) => {
          let said = "";
          serving.stdout.on("data", (bytes) => {
            said += bytes;
            const found = /http:\/\/127\.0\.0\.1:\d+\//.exec(said);
            if (found) done(found[0]);
          });
          serving.on("exit", (code) => failed(new Error(`ended with ${code}: ${said}`)));
        });
        const seen = await Seen.open(browser, url, { proof: true });
        await seen.proved(1);
        await seen.page.locator(".menu summary").click();
        await seen.page.locator(".bookbox input").fill("first start");
        await seen.page.locator(".bookbox button").click();
        await seen.page.waitForFunction(() => document.querySelector(".bookbox [role=status]").textContent.length > 3);
        const listed = execFileSync(program, ["book", "list", "--book", book], { encoding: "utf8" });
        assert.match(listed, /Alder Hollow 4/);
        await seen.close();
      } finally {
        serving.kill("SIGTERM");
        rmSync(folder, { recursive: true, force: true });
      }
    },
  },
];
