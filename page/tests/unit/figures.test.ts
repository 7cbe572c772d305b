import { describe, expect, it } from "vitest";
import { beside } from "../../src/live/beside";
import { spread, ticks } from "../../src/live/labels";
import { waterShare } from "../../src/live/tank";
import { entryOf, textOf } from "../../src/state/range_text";
import { readingsToml, rowsOf, withUnit } from "../../src/state/readings";
import { siOf, stepped, typed } from "../../src/state/steps";
import { clock, span, text, toSi } from "../../src/state/units";
import { insideBand } from "../../src/state/bands";

describe("ranges as people enter them", () => {
  it.each(["40 ± 3 ft", "40 ft", "90 .. 140 ft", "90 .. 110 .. 140 ft", "1.3", "12 AWG"])("%s reads back as it was", (written) => {
    expect(textOf(entryOf(written, "ft"))).toBe(written);
  });
  it("keeps what it does not understand, and nothing is not known", () => {
    expect(textOf(entryOf("5 ft 3 in ± a bit", "ft"))).toBe("5 ft 3 in ± a bit");
    expect(entryOf("", "ft").way).toBe("unknown");
    expect(textOf({ way: "between", a: "3", b: "", c: "", unit: "ft" })).toBe("");
  });
  it("knows the ways apart", () => {
    expect(entryOf("90 to 140 ft", "ft")).toMatchObject({ way: "between", a: "90", b: "140", unit: "ft" });
    expect(entryOf("110 +/- 10 m", "m")).toMatchObject({ way: "about", a: "110", b: "10", unit: "m" });
    expect(entryOf("1-1/4 in", "in")).toMatchObject({ way: "exactly", a: "1-1/4", unit: "in" });
  });
});

describe("units", () => {
  it("shows what handbooks say", () => {
    // 1 psi = 6894.757 Pa, 1 US gallon = 3.785411784 L (NIST SP 811, appendix B)
    expect(text(344737.86, "pressure", "us")).toBe("50.0 psi");
    expect(text(6.30901964e-4, "flow", "us")).toBe("10.00 gpm");
    expect(text(6.30901964e-4, "flow", "metric")).toBe("37.9 L/min");
    expect(text(20, "temperature", "us")).toBe("68 °F");
    expect(text(null, "pressure", "us")).toBe("–");
    expect(text(-0.001, "speed", "us")).toBe("0.0 Hz");
    expect(toSi(68, "temperature", "us")).toBeCloseTo(20, 9);
  });
  it("says times as one says them", () => {
    expect([span(41.2), span(2460), span(7500), clock(3753)]).toEqual(["41 s", "41 min", "2 h 5 min", "1:02:33"]);
  });
});

describe("settings moved by a press", () => {
  it("go to the next step of the grid, up and down", () => {
    expect(stepped("pressure.target", 344737.86, true, "us")).toBe("51 psi");
    expect(stepped("pressure.target", 344737.86, false, "us")).toBe("49 psi");
    expect(stepped("dry_run.amps_below", 3.37, true, "us")).toBe("3.4 A");
    expect(stepped("dry_run.amps_below", 3.37, false, "us")).toBe("3.35 A");
    expect(stepped("sleep.hold", 0, false, "us")).toBe("0 s");
    expect(stepped("sensor.trim", 0, false, "us")).toBe("-0.5 psi");
    expect(stepped("permissive.sense", 0, true, "us")).toBeUndefined();
  });
  it("go on from a press that is not planned yet", () => {
    expect(siOf("pressure.target", "51 psi", "us")).toBeCloseTo(351632.6, 0);
    expect(stepped("pressure.target", siOf("pressure.target", "51 psi", "us")!, true, "us")).toBe("52 psi");
    expect(siOf("pressure.target", "3.5 bar", "us")).toBeUndefined();
  });
  it("take a typed figure without a unit as the unit shown", () => {
    expect(typed("pressure.target", "52", "us")).toBe("52 psi");
    expect(typed("pressure.target", "3,5", "metric")).toBe("3.5 kPa");
    expect(typed("pressure.target", "3.5 bar", "us")).toBe("3.5 bar");
  });
});

describe("readings", () => {
  it("become the file that fit reads", () => {
    const rows = [{ condition: "rest", values: { level: "44.3" } }, { condition: "shut", values: { gauge: "58.6 ± 1", current: "3.08 A", speed: " " } }, { condition: "open", values: {} }];
    expect(readingsToml(rows, "us")).toBe('[[reading]]\ncondition = "rest"\nlevel = "44.3 ft"\n\n[[reading]]\ncondition = "shut"\ngauge = "58.6 ± 1 psi"\ncurrent = "3.08 A"\n');
    expect(withUnit("9,2", "flow", "metric")).toBe("9.2 L/min");
  });
  it("that were stored by something else are none", () => {
    expect(rowsOf("")).toEqual([]);
    expect(rowsOf("{")).toEqual([]);
    expect(rowsOf('[3, null, {"condition": 4}]')).toEqual([]);
  });
  it("are held against their band in the unit shown", () => {
    const band = { key: "pressure", what: "", meter: "", unit: "Pa", least: 330000, middle: null, most: 350000, band: "" };
    expect(insideBand("50", band, "us")).toBe(true);
    expect(insideBand("47", band, "us")).toBe(false);
    expect(insideBand("340", band, "metric")).toBe(true);
    expect(insideBand("x", band, "us")).toBeUndefined();
  });
});

describe("the drawing", () => {
  it("keeps labels apart and inside", () => {
    const at = spread([{ key: "a", y: 10, text: "" }, { key: "b", y: 12, text: "" }, { key: "c", y: 98, text: "" }], 20, 0, 100).map((each) => each.at);
    expect(at).toEqual([10, 30, 98]);
    const low = spread([{ key: "a", y: 99, text: "" }, { key: "b", y: 99, text: "" }], 20, 0, 100).map((each) => each.at);
    expect(low).toEqual([80, 100]);
  });
  it("has round ticks", () => {
    expect(ticks(140, 7)).toEqual([0, 20, 40, 60, 80, 100, 120, 140]);
    expect(ticks(46, 8).at(1)).toBe(10);
  });
  it("fills the tank by Boyle's law", () => {
    // 35 psi precharge, 50 psi: (50 + 14.696 - 35 - 14.696)/(50 + 14.696) = 0.232
    expect(waterShare(50 * 6894.757, 35 * 6894.757)).toBeCloseTo(0.232, 3);
    expect(waterShare(1e5, 2e5)).toBe(0);
  });
});

describe("what would have been, drawn beside what was", () => {
  const points = [0, 1, 2, 6, 9, 10].map((t) => ({ t }));
  it("lies between its own points in a line, and ends with them", () => {
    expect(beside(points, [1, 9], [10, 50])).toEqual([null, 10, 15, 35, 50, null]);
  });
  it("jumps where two points have one time", () => {
    expect(beside([{ t: 1 }, { t: 2 }, { t: 3 }], [1, 2, 2, 3], [0, 0, 8, 8])).toEqual([0, 8, 8]);
  });
  it("is nothing where there is none", () => {
    expect(beside(points, [], [])).toEqual(points.map(() => null));
  });
});
