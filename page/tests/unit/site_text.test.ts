import { describe, expect, it } from "vitest";
import { filesNamed, valueIn, withRun, withValue } from "../../src/state/site_text";

const site = `# by hand
[site]
name = "Alder Hollow 4"

[well]
static_level = "40 ± 3 ft"        # sounded # twice
depth = "140 ft"

[motor]
service_factor = 1.3

[[pipe]]
place = "drop"
size = "1-1/4 in"

[[pipe]]
place = "yard"
length = "60 ft"
`;

describe("a site file that is changed line by line", () => {
  it("reads a value without quotes and remark", () => {
    expect(valueIn(site, "well.static_level")).toBe("40 ± 3 ft");
    expect(valueIn(site, "motor.service_factor")).toBe("1.3");
    expect(valueIn(site, "pipe.2.length")).toBe("60 ft");
    expect(valueIn(site, "pipe.1.length")).toBe("");
    expect(valueIn(site, "tank.volume")).toBe("");
  });

  it("changes the one line and keeps its remark", () => {
    const next = withValue(site, "well.static_level", "42 ft");
    expect(next).toContain('static_level = "42 ft"  # sounded # twice');
    expect(next.split("\n").length).toBe(site.split("\n").length);
    expect(withValue(next, "well.static_level", "40 ± 3 ft").replace("  # sounded", "        # sounded")).toBe(site);
  });

  it("adds a key to its table, and a table that is not there", () => {
    expect(withValue(site, "well.casing", "6 in")).toContain('depth = "140 ft"\ncasing = "6 in"\n\n[motor]');
    expect(withValue(site, "tank.volume", "14 gal")).toMatch(/\[tank\]\nvolume = "14 gal"\n$/);
    expect(withValue(site, "pipe.1.length", "100 ft")).toContain('size = "1-1/4 in"\nlength = "100 ft"\n');
  });

  it("takes a key out, and does nothing where there is none", () => {
    expect(withValue(site, "well.depth", "")).not.toContain("depth");
    expect(withValue(site, "tank.volume", "")).toBe(site);
  });

  it("writes text that would end the string as text", () => {
    const name = '<script>alert(1)</script> "\\';
    expect(valueIn(withValue(site, "site.name", name), "site.name")).toBe(name);
  });

  it("adds a run and finds the files that are named", () => {
    expect(valueIn(withRun(site, "pipe", { place: "house", length: "9 ft" }), "pipe.3.length")).toBe("9 ft");
    expect(filesNamed('[pump]\ncurve_file = "a.csv" # x\n')).toEqual(["a.csv"]);
  });
});
