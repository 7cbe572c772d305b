// The stops by day and time of day, newest day at the bottom; a bar is the rest that the drive takes after a stop.
import { dayLong_s, stopDays, type StopTold } from "../state/stops_chart";
import { w } from "../state/store";
import { span } from "../state/units";

const box = { left: 62, right: 468, top: 26, row: 26 };
const x = (s: number) => box.left + ((box.right - box.left) * Math.min(s, dayLong_s)) / dayLong_s;

/// Kinds differ in shape as well as in colour.
function Mark({ place, at, y }: { place: number; at: number; y: number }) {
  const shapes = [`M${at - 6} ${y}a6 6 0 1 0 12 0a6 6 0 1 0 -12 0z`, `M${at - 6} ${y - 6}h12v12h-12z`, `M${at} ${y - 7}l7 12h-14z`, `M${at} ${y - 7}l7 7l-7 7l-7 -7z`];
  return <path d={shapes[place % shapes.length]!} class={`stopmark kind${place % 4}`} />;
}

export function StopsChart({ stops, now_s, rest_s, told }: { stops: StopTold[]; now_s: number | null; rest_s: number; told: string }) {
  const t = w.value.history;
  const days = stopDays(stops, now_s);
  if (!days) return null;
  const bottom = box.top + box.row * days.days;
  const y = (back: number) => box.top + box.row * (days.days - 0.5 - back);
  const place = (kind: string) => days.kinds.indexOf(kind);
  return (
    <figure class="stopschart">
      <svg viewBox={`0 0 480 ${bottom + 44}`} role="img" aria-label={`${t.chart}. ${told}`}>
        {[0, 21].map((from) => (
          <rect class="night" x={x(from * 3600)} y={box.top} width={x((from ? 24 : 6) * 3600) - x(from * 3600)} height={bottom - box.top} />
        ))}
        {[0, 6, 12, 18, 24].map((hour) => (
          <g class="grid">
            <path d={`M${x(hour * 3600)} ${box.top}V${bottom}`} />
            <text x={x(hour * 3600)} y={bottom + 20} text-anchor="middle">
              {hour}:00
            </text>
          </g>
        ))}
        {days.labels.map((label, back) => (
          <text x={box.left - 8} y={y(back) + 5} text-anchor="end">
            {label}
          </text>
        ))}
        {days.marks
          .filter((each) => each.rests && rest_s > 0)
          .map((each) => (
            <path class={`rests kind${place(each.kind) % 4}`} d={`M${x(each.at_s)} ${y(each.back)}H${x(each.at_s + rest_s)}`} />
          ))}
        {days.marks.map((each) => (
          <Mark place={place(each.kind)} at={x(each.at_s)} y={y(each.back)} />
        ))}
        <path class="nowline" d={`M${x(days.now_s)} ${y(0) - 13}v26`} />
        <text x={x(days.now_s)} y={box.top - 8} text-anchor="middle">
          {t.now}
        </text>
        <text x={(box.left + box.right) / 2} y={bottom + 40} text-anchor="middle">
          {t.timeOfDay}
        </text>
      </svg>
      <ul class="kindlegend">
        {days.kinds.map((kind, i) => (
          <li>
            <svg viewBox="0 0 20 20" width="20" height="20" aria-hidden="true">
              <Mark place={i} at={10} y={10} />
            </svg>{" "}
            {w.value.causes[kind] ?? kind.replaceAll("_", " ")}
          </li>
        ))}
      </ul>
      <figcaption class="note">
        {t.chartSays} {span(rest_s)}.{days.older > 0 && ` ${days.older} ${t.older}`}
      </figcaption>
    </figure>
  );
}
