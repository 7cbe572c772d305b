// Settings as the file that --settings of every command reads.
import type { Plan } from "./plan";

export function settingsToml(name: string, plan: Plan): string {
  const lines = [`# Settings of ${JSON.stringify(name)}`];
  for (const [key, one] of Object.entries(plan.settings)) {
    lines.push(`${key} = ${JSON.stringify(typeof one.value === "string" ? one.value : one.text)}`);
  }
  return `${lines.join("\n")}\n`;
}
