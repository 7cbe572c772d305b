// The text of a site file, changed line by line, so that everything else a person wrote stays as it is. The core reads
// the result and says what is wrong with it.

/// "pipe.2.length" → the second [[pipe]]; "well.depth" → [well].
function placeOf(key: string): { head: RegExp; nth: number; name: string; table: string } {
  const parts = key.split(".");
  const numbered = parts.length === 3;
  const table = parts[0]!;
  return {
    table,
    nth: numbered ? Number(parts[1]) : 1,
    name: parts.at(-1)!,
    head: numbered ? new RegExp(`^\\s*\\[\\[\\s*${table}\\s*\\]\\]`) : new RegExp(`^\\s*\\[\\s*${table}\\s*\\]`),
  };
}

/// First line behind a table's head and first line behind the table.
function span(lines: string[], key: string): [number, number] | undefined {
  const { head, nth } = placeOf(key);
  let seen = 0;
  for (let i = 0; i < lines.length; ++i) {
    if (!head.test(lines[i]!) || ++seen < nth) continue;
    let end = i + 1;
    while (end < lines.length && !/^\s*\[/.test(lines[end]!)) ++end;
    return [i + 1, end];
  }
  return undefined;
}

function lineOf(lines: string[], key: string): number {
  const within = span(lines, key);
  if (!within) return -1;
  const start = new RegExp(`^\\s*${placeOf(key).name}\\s*=`);
  for (let i = within[0]; i < within[1]; ++i) {
    if (start.test(lines[i]!)) return i;
  }
  return -1;
}

/// What stands behind the key, without quotes and remark; empty where there is nothing or it goes over several lines.
export function valueIn(text: string, key: string): string {
  const lines = text.split("\n");
  const at = lineOf(lines, key);
  if (at < 0) return "";
  const value = lines[at]!.replace(/^[^=]*=\s*/, "").replace(/\r$/, "");
  const quoted = /^"((?:[^"\\]|\\.)*)"/.exec(value);
  if (quoted) {
    try {
      return JSON.parse(`"${quoted[1]}"`) as string;
    } catch {
      return quoted[1]!;
    }
  }
  return value.startsWith("[") ? "" : value.replace(/\s*#.*$/, "").trim();
}

/// The text with a key set, or taken out where the value is empty.
export function withValue(text: string, key: string, value: string): string {
  const lines = text.split("\n");
  const at = lineOf(lines, key);
  const { name, table, nth } = placeOf(key);
  const bare = /^[+-]?\d+(\.\d+)?$/.test(value) || value === "true" || value === "false";
  const line = `${name} = ${bare ? value : JSON.stringify(value)}`;
  if (at >= 0) {
    if (!value) {
      lines.splice(at, 1);
    } else {
      const remark = /^[^=]*=\s*(?:"(?:[^"\\]|\\.)*"|[^#"]*)(\s*#.*)?$/.exec(lines[at]!.replace(/\r$/, ""))?.[1] ?? "";
      lines[at] = line + remark.replace(/^\s*/, remark ? "  " : "");
    }
    return lines.join("\n");
  }
  if (!value) return text;
  const within = span(lines, key);
  if (within) {
    let end = within[1];
    while (end > within[0] && /^\s*(#.*)?$/.test(lines[end - 1]!)) --end;
    lines.splice(end, 0, line);
    return lines.join("\n");
  }
  const tail = text.endsWith("\n") || !text ? text : `${text}\n`;
  return nth > 1 ? text : `${tail}\n${key.split(".").length === 3 ? `[[${table}]]` : `[${table}]`}\n${line}\n`;
}

/// The text with a further [[pipe]] or [[zone]] at its end.
export function withRun(text: string, table: "pipe" | "zone", values: Record<string, string>): string {
  const lines = Object.entries(values).map(([key, value]) => `${key} = ${JSON.stringify(value)}`);
  return `${text.replace(/\n*$/, "\n")}\n[[${table}]]\n${lines.join("\n")}\n`;
}

/// Names of the files that it speaks of.
export function filesNamed(text: string): string[] {
  return [...text.matchAll(/^\s*curve_file\s*=\s*"([^"\n]+)"/gm)].map((match) => match[1]!);
}
