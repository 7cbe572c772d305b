// What goes to the core and comes back: the bytes of apps/door/request.h as JSON.
export interface Finding {
  file: string;
  line: number;
  column: number;
  key: string;
  found: string;
  expected: string;
  nearest: string;
}

export interface Answer {
  exit_code: number;
  out: string;
  err: string;
  files: { name: string; text: string }[];
  findings?: Finding[];
}

export interface NamedText {
  file: string;
  text: string;
}

export interface SiteText extends NamedText {
  beside: { name: string; text: string }[];
}

export type Request = Record<string, unknown> & { command: string };

/// An answer's findings, or its plain text of errors as one.
export function findingsOf(answer: Answer): Finding[] {
  if (answer.findings?.length) return answer.findings;
  if (answer.exit_code < 2 && !answer.err) return [];
  return [{ file: "", line: 0, column: 0, key: "", found: answer.err.trim(), expected: "", nearest: "" }];
}
