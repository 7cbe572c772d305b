// Current over speed, or input power where the drive guards by it: what each would mean, the thresholds, and where the
// pump is now.
import { useComputed } from "@preact/signals";
import { inForce, scene, told, type Point } from "../state/live";
import type { MapRow, Spread } from "../state/plan";
import { plan, w } from "../state/store";
import { Term } from "../views/term";
import { tenths, ticks } from "./labels";

const box = { left: 46, right: 470, top: 14, bottom: 268 };

/// What is looked at: the motor's current or its input power.
const byCurrent = {
  dry: (row: MapRow) => row.dry_a,
  shut: (row: MapRow) => row.shut_a,
  least: (row: MapRow) => row.least_draw_a,
  most: (row: MapRow) => row.most_draw_a,
  now: (at: Point) => at.current_a,
  dryBelow: "dry_run.amps_below",
  closedBelow: "closed.amps_below",
  unit: "A",
  digits: 2,
};
const byPower: typeof byCurrent = {
  dry: (row) => row.dry_w,
  shut: (row) => row.shut_w,
  least: (row) => row.least_draw_w,
  most: (row) => row.most_draw_w,
  now: (at) => at.power_w,
  dryBelow: "dry_run.power_below",
  closedBelow: "closed.power_below",
  unit: "W",
  digits: 0,
};

function shown() {
  const t = w.value.map;
  return scene.value?.guards_by_power
    ? { load: byPower, title: t.titleByPower, says: t.saysByPower }
    : { load: byCurrent, title: t.title, says: t.says };
}

interface Axes {
  x: (hz: number) => number;
  y: (load: number) => number;
  load: typeof byCurrent;
}

/// Where the pump is now, the only part that moves.
function Living({ x, y, load }: Axes) {
  const now = told.value?.now;
  if (!now || now.speed_hz <= 0) return null;
  const [at, up] = [tenths(x(now.speed_hz)), tenths(y(load.now(now)))];
  return (
    <g class="living">
      <path d={`M${at} ${box.bottom}V${up}H${box.left}`} />
      <circle cx={at} cy={up} r="9" />
    </g>
  );
}

export function CurrentMap() {
  const t = w.value.map;
  const rows = plan.value?.map.rows;
  const set = inForce.value;
  const { load, title, says } = shown();
  const label = useComputed(() => {
    const [now, all] = [told.value?.now, shown()];
    return `${all.title}. ${all.says} ${w.value.map.now}: ${now?.speed_hz.toFixed(1)} Hz, ${now ? all.load.now(now).toFixed(all.load.digits) : ""} ${all.load.unit}`;
  });
  if (!rows?.length) return null;
  const least = rows[0]!.speed_hz;
  const mostHz = Math.max(rows.at(-1)!.speed_hz, scene.value?.top_hz ?? 0);
  const limit = load === byCurrent ? (set["motor.current_limit"] ?? 0) : 0;
  const ceilingHz = set["speed.ceiling"] ?? mostHz;
  const highest = Math.max(...rows.map((row) => (limit > 0 ? Math.min(load.most(row).high ?? 0, limit * 1.3) : row.speed_hz <= ceilingHz ? (load.most(row).high ?? 0) : 0)));
  const most = Math.max(limit * 1.12, highest * (limit > 0 ? 1 : 1.12), 1);
  const x = (hz: number) => box.left + ((Math.min(Math.max(hz, least - 4), mostHz) - least + 4) / (mostHz - least + 4)) * (box.right - box.left);
  const y = (value: number) => box.bottom - (Math.min(value, most) / most) * (box.bottom - box.top);
  const band = (of: (row: MapRow) => Spread) => {
    const there = rows.filter((row) => of(row).low !== null && of(row).high !== null);
    const line = (pick: "low" | "high") => there.map((row) => `${x(row.speed_hz).toFixed(1)} ${y(of(row)[pick]!).toFixed(1)}`);
    return there.length ? `M${line("low").join("L")}L${line("high").reverse().join("L")}Z` : "";
  };
  // A card's drive may watch at any speed.
  const guard = scene.value?.guards_any_speed ? least - 4 : ceilingHz * (scene.value?.guard_speed_share ?? 1);
  const sleep = set["sleep.speed_below"] ?? 0;
  const threshold = (below: number | undefined, label: string, kind: string) =>
    below ? (
      <g class={`threshold ${kind}`}>
        <path d={`M${x(guard) - 3} ${y(below)}H${x(ceilingHz) + 3}`} />
        <text x={scene.value?.guards_any_speed ? x(ceilingHz) - 8 : x(guard) - 8} y={scene.value?.guards_any_speed ? y(below) - 6 : y(below) + 5} text-anchor="end">
          {label} {below.toFixed(load.digits)} {load.unit}
        </text>
      </g>
    ) : null;
  return (
    <section class="map" aria-labelledby="map-name">
      <h2 id="map-name">
        {title} <Term of="draw" />
      </h2>
      <svg viewBox="0 0 480 300" role="img" aria-label={label}>
        <defs>
          <pattern id="dry-hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <path d="M0 0v7" class="hatch-dry" />
          </pattern>
          <pattern id="shut-hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
            <path d="M0 0v7" class="hatch-shut" />
          </pattern>
        </defs>
        {ticks(most, 5).filter((at) => y(at) > box.top + 16).map((at) => (
          <g class="grid">
            <path d={`M${box.left} ${y(at)}H${box.right}`} />
            <text x={box.left - 6} y={y(at) + 5} text-anchor="end">
              {at}
            </text>
          </g>
        ))}
        {[30, 40, 50, 60, 70, 80].filter((hz) => hz >= least - 4 && hz <= mostHz).map((hz) => (
          <g class="grid">
            <path d={`M${x(hz)} ${box.top}V${box.bottom}`} />
            <text x={x(hz)} y={box.bottom + 20} text-anchor="middle">
              {hz}
            </text>
          </g>
        ))}
        <text x={box.right + 6} y={box.bottom - 6} text-anchor="end" class="unit">
          Hz
        </text>
        <text x={box.left - 6} y={box.top} text-anchor="end" class="unit">
          {load.unit}
        </text>
        <path d={band(load.dry)} class="band dry" fill="url(#dry-hatch)" />
        <path d={band(load.shut)} class="band shut" fill="url(#shut-hatch)" />
        <path d={band(load.least)} class="band least" />
        <path d={band(load.most)} class="band most" />
        <rect x={x(guard)} y={box.top} width={Math.max(2, x(ceilingHz) - x(guard))} height={box.bottom - box.top} class="watched" />
        {limit > 0 && (
          <g class="threshold limit">
            <path d={`M${box.left} ${y(limit)}H${box.right}`} />
            <text x={box.left + 6} y={y(limit) - 6}>
              {t.limit} {limit.toFixed(2)} A
            </text>
          </g>
        )}
        {sleep > 0 && scene.value?.sleeps_by_speed && (
          <g class="threshold sleep">
            <path d={`M${x(sleep)} ${box.top + 26}V${box.bottom}`} />
            <text x={x(sleep) + 5} y={box.bottom - 8}>
              {t.sleepBelow} {sleep.toFixed(1)}
            </text>
          </g>
        )}
        {threshold(set[load.dryBelow], t.dryBelow, "dry")}
        {threshold(set[load.closedBelow], t.closedBelow, "closed")}
        <Living x={x} y={y} load={load} />
      </svg>
      <ul class="legend">
        <li class="dry">{t.dry}</li>
        <li class="shut">{t.shut}</li>
        <li class="least">{t.least}</li>
        <li class="most">{t.most}</li>
        <li class="watched">{t.watched}</li>
      </ul>
      <p class="note">{says}</p>
    </section>
  );
}
