// The example sites that come with the program, under their own names.
import curve from "../../../examples/deep_weak_curve.csv?raw";
import deepWeak from "../../../examples/deep_weak.toml?raw";
import shallowStrong from "../../../examples/shallow_strong.toml?raw";
import type { SiteText } from "../core/protocol";

export const demos: SiteText[] = [
  { file: "shallow_strong.toml", text: shallowStrong, beside: [] },
  { file: "deep_weak.toml", text: deepWeak, beside: [{ name: "deep_weak_curve.csv", text: curve }] },
];
