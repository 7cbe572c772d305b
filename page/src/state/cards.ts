// Drive cards that can be chosen: the two examples and those that were brought to this browser. The core reads them.
import cardPlain from "../../../examples/card_plain.toml?raw";
import cardPower from "../../../examples/card_power.toml?raw";
import type { NamedText } from "../core/protocol";

export const cardDemos: NamedText[] = [
  { file: "card_plain.toml", text: cardPlain },
  { file: "card_power.toml", text: cardPower },
];

/// Whether a file is a card and no site.
export function isCard(text: string): boolean {
  return /^\s*\[\s*card\s*\]/m.test(text) && !/^\s*\[\s*well\s*\]/m.test(text);
}

/// What the card calls its drive.
export function nameOfCard(card: NamedText): string {
  const within = card.text.split(/^\s*\[\s*card\s*\]\s*(?:#.*)?$/m)[1] ?? "";
  return /^\s*name\s*=\s*"([^"\n]+)"/m.exec(within)?.[1] ?? card.file;
}
