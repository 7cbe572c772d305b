// Site files in and out. Whatever a file holds, the core reads it and says what is wrong with it.
import type { SiteText } from "../core/protocol";
import { filesNamed } from "./site_text";

export const mostBytes = 1 << 20;

export interface TextFile {
  name: string;
  text: string;
}

/// One site with what lies beside it, out of the files that were chosen together: the .toml, and the tables it names.
export function siteOf(files: TextFile[]): SiteText | undefined {
  const main = files.find((file) => file.name.toLowerCase().endsWith(".toml")) ?? files[0];
  if (!main) return undefined;
  const named = filesNamed(main.text);
  return { file: main.name, text: main.text, beside: files.filter((file) => file !== main && named.includes(file.name)).map(({ name, text }) => ({ name, text })) };
}

export async function readAll(list: FileList | File[]): Promise<{ files: TextFile[]; tooLarge: string[] }> {
  const files: TextFile[] = [];
  const tooLarge: string[] = [];
  for (const file of list) {
    if (file.size > mostBytes) tooLarge.push(file.name);
    else files.push({ name: file.name, text: await file.text() });
  }
  return { files, tooLarge };
}
