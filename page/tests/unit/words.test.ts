// Every caution and every cause that the core can name has its Spanish words: their keys are read from the core's source.
import { readdirSync, readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { es } from "../../src/words/es";

const src = `${import.meta.dirname}/../../../src`;
const sources = readdirSync(src, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".cc"));
const read = (names: string[]) => names.map((name) => readFileSync(`${src}/${name}`, "utf8")).join("\n");
const keys = (text: string, pattern: RegExp) => [...text.matchAll(pattern)].map((found) => found[1]!);

it("cautions", () => {
  const made = keys(read(sources), /\bcaution\(\s*"([a-z_]+)"/g);
  const standing = keys(read(["sheet/cautions.cc"]), /\{"([a-z_]+)",\s*\n/g);
  const explained = keys(read(["sheet/explain_words.cc"]).split("explain_cautions")[1]!, /\{"([a-z_]+)",\s*(?:\n\s*)?"/g);
  expect(made.length).toBeGreaterThan(9);
  expect(standing).toHaveLength(6);
  expect(explained).toHaveLength(4);
  expect([...made, ...standing, ...explained, "given_settings"].filter((key) => !es.cautions[key])).toEqual([]);
});

it("causes of stops", () => {
  const made = keys(read(["explain/fault.cc"]), /^\s*\{"([a-z_]+)", "/gm);
  expect(made.length).toBeGreaterThan(25);
  expect(made.filter((key) => !es.faults[key])).toEqual([]);
});

it("no form of the core stands twice, the second would never be said", () => {
  const folder = `${import.meta.dirname}/../../src/words`;
  const forms = readdirSync(folder)
    .filter((name) => name.startsWith("es_core_"))
    .flatMap((name) => keys(readFileSync(`${folder}/${name}`, "utf8"), /\[\s*"((?:[^"\\]|\\.)*)",\s*"/g));
  expect(forms.length).toBeGreaterThan(900);
  expect(forms.filter((form, i) => forms.indexOf(form) !== i)).toEqual([]);
});
