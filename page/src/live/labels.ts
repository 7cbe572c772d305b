// Labels beside a drawing: moved apart so that none covers another, in the order in which they stand.
export interface Label {
  y: number;
  text: string;
  key: string;
}

export function spread(labels: Label[], height: number, from: number, to: number): (Label & { at: number })[] {
  const out = [...labels].sort((a, b) => a.y - b.y).map((each) => ({ ...each, at: each.y }));
  let low = from;
  for (const each of out) {
    each.at = Math.max(each.at, low);
    low = each.at + height;
  }
  let high = to;
  for (const each of [...out].reverse()) {
    each.at = Math.min(each.at, high);
    high = each.at - height;
  }
  return out;
}

/// A place in a drawing, as fine as anyone sees it.
export const tenths = (place: number) => Math.round(place * 10) / 10;

/// How far the dashes on a pipe have come, of 24: as quick as the water, up to twice its usual flow.
export const dashes = (time_s: number, flow: number, usual: number) => tenths((-time_s * 40 * Math.min(2, usual > 0 ? flow / usual : 1)) % 24);

/// Round figures for a ruler: about so many, from 0.
export function ticks(most: number, about: number): number[] {
  const rough = most / about;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((each) => each * power).find((each) => each >= rough) ?? rough;
  const out: number[] = [];
  for (let i = 0; i * step <= most * 1.0001; ++i) out.push(i * step);
  return out;
}
