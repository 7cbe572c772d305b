import { describe, expect, it } from "vitest";
import { isFigure, translator } from "../../src/words/translated";

const say = translator([
  ["At {} {} takes {} at the most.", "A {} {} toma {} como máximo."],
  ["At {} it holds.", "A {} sostiene."],
  ["a pump without water", "una bomba sin agua"],
  ["{} to {}", "{} a {}"],
  ["{} of {} draws", "en {1} sorteos, {0}"],
  ["above {}", "arriba de {}"],
]);

describe("what the core says, translated", () => {
  it("by its form, with what varies", () => {
    expect(say("At 57.5 Hz a pump without water takes 3.2 A to 4 A at the most.")).toBe("A 57.5 Hz una bomba sin agua toma 3.2 A a 4 A como máximo.");
  });
  it("sentence by sentence", () => {
    expect(say("At 57.5 Hz it holds. At 60 Hz a pump without water takes 4 A at the most.")).toBe(
      "A 57.5 Hz sostiene. A 60 Hz una bomba sin agua toma 4 A como máximo.",
    );
  });
  it("in another order", () => {
    expect(say("3 of 32 draws")).toBe("en 32 sorteos, 3");
  });
  it("not at all where a form is lacking", () => {
    expect(say("At 57.5 Hz it holds. And so on.")).toBeUndefined();
    expect(say("At 57.5 Hz a pump with air takes 4 A at the most.")).toBeUndefined();
  });
  it.each(["57.5 Hz", "−0.32", "3 1/2 in", "12 AWG", "0.5 Hz/psi", "1:02:03", "closed.amps_below", "40 ± 3 ft", "10 %", "4.32e-6 ft/gpm2"])("%s is a figure", (text) => {
    expect(isFigure(text)).toBe(true);
  });
  it.each(["", "above 3 Hz", "the pump", "3 of 4"])("%s is none", (text) => {
    expect(isFigure(text)).toBe(false);
  });
});
