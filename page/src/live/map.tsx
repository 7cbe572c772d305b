// Current over speed: what each would mean, the thresholds, and where the pump is now.
import { inForce, scene, told } from "../state/live";
import type { MapRow, Spread } from "../state/plan";
import { plan, w } from "../state/store";
import { Term } from "../views/term";
import { ticks } from "./labels";

const box = { left: 46, right: 470, top: 14, bottom: 268 };

export function CurrentMap() {
  const t = w.value.map;
  const rows = plan.value?.map.rows;
  const set = inForce.value;
  const now = told.value?.now;
  if (!rows?.length) return null;
  const least = rows[0]!.speed_hz;
  const mostHz = Math.max(rows.at(-1)!.speed_hz, scene.value?.top_hz ?? 0);
  const limit = set["motor.current_limit"] ?? 0;
  const mostA = Math.max(limit * 1.12, ...rows.map((row) => Math.min(row.most_draw_a.high ?? 0, limit * 1.3)));
  const x = (hz: number) => box.left + ((Math.min(Math.max(hz, least - 4), mostHz) - least + 4) / (mostHz - least + 4)) * (box.right - box.left);
  const y = (a: number) => box.bottom - (Math.min(a, mostA) / mostA) * (box.bottom - box.top);
  const band = (of: (row: MapRow) => Spread) => {
    const there = rows.filter((row) => of(row).low !== null && of(row).high !== null);
    const line = (pick: "low" | "high") => there.map((row) => `${x(row.speed_hz).toFixed(1)} ${y(of(row)[pick]!).toFixed(1)}`);
    return there.length ? `M${line("low").join("L")}L${line("high").reverse().join("L")}Z` : "";
  };
  const ceiling = set["speed.ceiling"] ?? mostHz;
  const guard = ceiling * (scene.value?.guard_speed_share ?? 1);
  const sleep = set["sleep.speed_below"] ?? 0;
  const threshold = (amps: number | undefined, label: string, kind: string) =>
    amps ? (
      <g class={`threshold ${kind}`}>
        <path d={`M${x(guard) - 3} ${y(amps)}H${x(ceiling) + 3}`} />
        <text x={x(guard) - 8} y={y(amps) + 5} text-anchor="end">
          {label} {amps.toFixed(2)} A
        </text>
      </g>
    ) : null;
  return (
    <section class="map" aria-labelledby="map-name">
      <h2 id="map-name">
        {t.title} <Term of="draw" />
      </h2>
      <svg viewBox="0 0 480 300" role="img" aria-label={`${t.title}. ${t.says} ${t.now}: ${now?.speed_hz.toFixed(1)} Hz, ${now?.current_a.toFixed(2)} A`}>
        <defs>
          <pattern id="dry-hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <path d="M0 0v7" class="hatch-dry" />
          </pattern>
          <pattern id="shut-hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
            <path d="M0 0v7" class="hatch-shut" />
          </pattern>
        </defs>
        {ticks(mostA, 5).map((a) => (
          <g class="grid">
            <path d={`M${box.left} ${y(a)}H${box.right}`} />
            <text x={box.left - 6} y={y(a) + 5} text-anchor="end">
              {a}
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
          A
        </text>
        <path d={band((row) => row.dry_a)} class="band dry" fill="url(#dry-hatch)" />
        <path d={band((row) => row.shut_a)} class="band shut" fill="url(#shut-hatch)" />
        <path d={band((row) => row.least_draw_a)} class="band least" />
        <path d={band((row) => row.most_draw_a)} class="band most" />
        <rect x={x(guard)} y={box.top} width={Math.max(2, x(ceiling) - x(guard))} height={box.bottom - box.top} class="watched" />
        {limit > 0 && (
          <g class="threshold limit">
            <path d={`M${box.left} ${y(limit)}H${box.right}`} />
            <text x={box.left + 6} y={y(limit) - 6}>
              {t.limit} {limit.toFixed(2)} A
            </text>
          </g>
        )}
        {sleep > 0 && (
          <g class="threshold sleep">
            <path d={`M${x(sleep)} ${box.top + 26}V${box.bottom}`} />
            <text x={x(sleep) + 5} y={box.bottom - 8}>
              {t.sleepBelow} {sleep.toFixed(1)}
            </text>
          </g>
        )}
        {threshold(set["dry_run.amps_below"], t.dryBelow, "dry")}
        {threshold(set["closed.amps_below"], t.closedBelow, "closed")}
        {now && now.speed_hz > 0 && (
          <g class="living">
            <path d={`M${x(now.speed_hz)} ${box.bottom}V${y(now.current_a)}H${box.left}`} />
            <circle cx={x(now.speed_hz)} cy={y(now.current_a)} r="9" />
          </g>
        )}
      </svg>
      <ul class="legend">
        <li class="dry">{t.dry}</li>
        <li class="shut">{t.shut}</li>
        <li class="least">{t.least}</li>
        <li class="most">{t.most}</li>
        <li class="watched">{t.watched}</li>
      </ul>
      <p class="note">{t.says}</p>
    </section>
  );
}
