import { describe, expect, it, vi } from "vitest";

vi.mock("../../src/core/hand", () => ({ hands: [], desk: {} }));

import { added, pieces } from "../../src/state/proof";
import { saidOf } from "../../src/live/said";
import { siteOf } from "../../src/state/files";
import { words } from "../../src/words/words";

const share = (first: number, runs: [boolean, number][], says: string) => ({
  first,
  count: runs.length,
  runs: { quiet_house: runs.map(([passed, margin], i): [number, boolean, number, number, number, number, number, null] => [first + i, passed, margin, 0, 0, 0, 0, null]) },
  worst: { quiet_house: says },
});

describe("a proof in shares", () => {
  it("counts runs and keeps the nearest", () => {
    let known = added([], share(0, [[true, 0.4], [true, 0.2]], "near"));
    known = added(known, share(2, [[true, 0.3]], "not so near"));
    expect(known[0]).toMatchObject({ runs: 3, failed: 0, margin: 0.2, draw: 1, says: "near" });
    known = added(known, share(3, [[false, 0.5]], "fails"));
    expect(known[0]).toMatchObject({ runs: 4, failed: 1, margin: 0.5, draw: 3, says: "fails" });
    known = added(known, share(4, [[true, -1]], "not a failure"));
    expect(known[0]).toMatchObject({ failed: 1, draw: 3 });
  });
  it.each([[128, 2], [128, 8], [7, 4], [8, 1]])("of %i draws over %i hands takes each draw once", (draws, hands) => {
    const seen = pieces(draws, hands).flatMap(([first, count]) => Array.from({ length: count }, (_, i) => first + i));
    expect(seen).toEqual(Array.from({ length: draws }, (_, i) => i));
    expect(pieces(draws, hands)[0]).toEqual([0, 1]);
  });
});

describe("words", () => {
  const leaves = (of: unknown, at = ""): [string, string][] =>
    typeof of === "string" ? [[at, of]] : Object.entries(of as object).flatMap(([key, value]) => leaves(value, `${at}.${key}`));
  it("none is empty, and Spanish has every scenario, cause, mode, setting and term that English has", () => {
    for (const each of Object.values(words)) {
      for (const [at, text] of leaves(each)) expect(text.trim(), at).not.toBe("");
    }
    for (const list of ["causes", "modes", "settingNames", "terms", "marginNames"] as const) {
      expect(Object.keys(words.es[list]).sort()).toEqual(Object.keys(words.en[list]).sort());
    }
  });
  it("are told in Spanish where English tells them", () => {
    const same = leaves(words.en).filter(([at, text]) => text.length > 12 && leaves(words.es).some(([other, there]) => other === at && there === text));
    expect(same).toEqual([]);
  });
  it("say what the drive does", () => {
    const state = { mode: "resting", cause: "dry_run", mode_for_s: 1140, rest_left_s: 2460, sleep_left_s: 0, dry_left_s: 0, closed_left_s: 0, long_run_left_s: 0, filtered_current_a: 0, tries: 1 };
    expect(saidOf(state, words.en)).toEqual({ main: "resting: dry, 41 min left", more: ["1 tries"] });
    expect(saidOf(state, words.es).main).toBe("descansando: en seco, faltan 41 min");
    expect(saidOf({ ...state, mode: "asleep", rest_left_s: 0 }, words.en).main).toBe("asleep");
  });
});

describe("files", () => {
  it("the table that a site names lies beside it", () => {
    const site = { name: "a.toml", text: 'curve_file = "c.csv"' };
    expect(siteOf([{ name: "c.csv", text: "1" }, { name: "x.csv", text: "2" }, site])).toEqual({ file: "a.toml", text: site.text, beside: [{ name: "c.csv", text: "1" }] });
    expect(siteOf([])).toBeUndefined();
  });
});
