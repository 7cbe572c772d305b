// Lo que el núcleo dice en todas partes.
import type { Forms } from "./translated";

export const forms: Forms = [
  ["{} to {}", "{} a {}"],
  ["{} of {}", "{} de {}"],
  ["{} ± {}", "{} ± {}"],
  ["{} a day", "{} al día"],
  ["{} draws", "{} sorteos"],
];
