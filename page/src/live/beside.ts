// What would have been, at the times of what was.

/// The ghost's figures at the times of the points, between its own in a line.
export function beside(points: { t: number }[], times: number[], figures: number[]): (number | null)[] {
  let i = 0;
  return points.map(({ t }) => {
    while (i + 1 < times.length && times[i + 1]! <= t) ++i;
    const [from, to] = [times[i], times[i + 1] ?? times[i]];
    if (from === undefined || t < from || t > to! + 1e-6) return null;
    return to! > from ? figures[i]! + ((t - from) / (to! - from)) * (figures[i + 1]! - figures[i]!) : figures[i]!;
  });
}
