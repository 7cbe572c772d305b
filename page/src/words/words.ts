// The languages. A language that lacks a word does not compile.
import { en } from "./en";
import { es } from "./es";

export type Words = typeof en;
export type Language = "en" | "es";
export const words: Record<Language, Words> = { en, es };
