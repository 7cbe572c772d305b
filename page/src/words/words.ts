// The languages. A language that lacks a word does not compile.
import { en } from "./en";
import { es } from "./es";
import { forms as cautions } from "./es_core_cautions";
import { forms as common } from "./es_core_common";
import { forms as explain } from "./es_core_explain";
import { forms as fields } from "./es_core_fields";
import { forms as proof } from "./es_core_proof";
import { forms as safety } from "./es_core_safety";
import { forms as settings } from "./es_core_settings";
import { translator } from "./translated";

export type Words = typeof en;
export type Language = "en" | "es";
export const words: Record<Language, Words> = { en, es };

/// What the core says; nothing where it has no words for that in the language.
export const ofCore: Record<Language, (text: string) => string | undefined> = {
  en: (text) => text,
  es: translator([...common, ...settings, ...fields, ...proof, ...safety, ...cautions, ...explain]),
};
