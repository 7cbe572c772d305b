import { describe, expect, it } from "vitest";
import { isCard, nameOfCard } from "../../src/state/cards";
import { stepped } from "../../src/state/steps";
import { stopDays } from "../../src/state/stops_chart";
import { historyText, nothingTold, priorOptions } from "../../src/state/told";

describe("what is told besides the stops", () => {
  it("follows the stops as lines of a history, so that their line numbers stay", () => {
    const told = {
      ...nothingTold,
      noticed: { cycles: { seen: true, value: "40" }, sand: { seen: false }, hunts: { seen: true, value: "0,5 bar" } },
      changed: ["a new lawn"],
      changedOtherwise: "a pool\nstop: dry",
      display: { pressure: "47", heat: "160" },
      taps: "open" as const,
    };
    expect(historyText("dry, 3h ago", told, "us")).toBe(
      "dry, 3h ago\nsymptom: cycles every 40 s\nsymptom: hunts by 0.5 bar\nsymptom: not sand\nchanged: a new lawn\nchanged: a pool stop: dry\ndisplay: 47 psi; 160 °F; tap open\n",
    );
  });
  it("leaves the stops alone where nothing else is told", () => {
    expect(historyText("dry, 3h ago", nothingTold, "us")).toBe("dry, 3h ago");
  });
  it("gives shares in percent as shares, and what is no number as it stands, for the core to find", () => {
    expect(priorOptions({ ...nothingTold, priors: { pump_worn: "20 %", none: "1,5", line_burst: "much", valve_shut: " " } })).toEqual(["pump_worn=0.2", "none=0.015", "line_burst=much"]);
  });
});

describe("the chart of the stops", () => {
  const day = 86400;
  it("puts each stop on its day, the newest day being today", () => {
    const now = 100 * day + 7 * 3600;
    const at = (age_h: number) => ({ kind: "dry_run", age_s: age_h * 3600, time_of_day_s: (((7 - age_h) % 24) + 48) % 24 * 3600 });
    const days = stopDays([at(1), at(7), at(8), at(31), at(32)], now)!;
    expect(days.marks.map((each) => each.back)).toEqual([0, 0, 1, 1, 2]);
    expect(days.days).toBe(3);
    expect(days.labels[0]).toBe(new Date(100 * day * 1000).toISOString().slice(5, 10));
    expect(days.older).toBe(0);
  });
  it("leaves out stops without an hour, and says how many are too old", () => {
    const days = stopDays([{ kind: "low_volts", age_s: 60, time_of_day_s: 60 }, { kind: "dry_run", age_s: 60, time_of_day_s: null }, { kind: "dry_run", age_s: 40 * day, time_of_day_s: 0 }], 100 * day + 120)!;
    expect(days.kinds).toEqual(["low_volts"]);
    expect(days.older).toBe(1);
    expect(stopDays([], 5)).toBeUndefined();
    expect(stopDays([{ kind: "dry_run", age_s: 1, time_of_day_s: 1 }], null)).toBeUndefined();
  });
});

describe("a drive card", () => {
  it("is told from a site, and named as it names its drive", () => {
    const text = '# x\n[card]\nname = "Bench drive"\n[[entry]]\nlabel = "a"\n';
    expect(isCard(text)).toBe(true);
    expect(isCard('[site]\nname = "a"\n[well]\ndepth = "3 m"\n')).toBe(false);
    expect(nameOfCard({ file: "f.toml", text })).toBe("Bench drive");
    expect(nameOfCard({ file: "f.toml", text: "[card]\nname = 3\n" })).toBe("f.toml");
  });
  it("moves a setting by the drive's step where that is the larger", () => {
    expect(stepped("speed.floor", 30, true, "us", 2)).toBe("32 Hz");
    expect(stepped("speed.floor", 30, false, "us", 0.1)).toBe("29.5 Hz");
  });
});
