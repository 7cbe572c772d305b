// The cross-section of this very site: depths to scale, alive with the run.
import { useRef } from "preact/hooks";
import { act, inputs, outletPlace, scene, told } from "../state/live";
import { system, w } from "../state/store";
import { inUnit, shownIn, text, toSi } from "../state/units";
import { dashes, spread, tenths, ticks } from "./labels";
import { Surface } from "./surface";

export const ground = 210; // y of the ground in the drawing
const bottom = 712;
const left = 110; // of the casing's bore
const right = 178;

/// Y of a depth, to scale from the ground to the bottom of the well. To tenths: what moves by less is not painted anew.
export function yOf(depth_m: number, deepest_m: number): number {
  return tenths(ground + (depth_m / deepest_m) * (bottom - ground));
}

export function Section() {
  const svg = useRef<SVGSVGElement>(null);
  const plant = scene.value;
  const state = told.value;
  if (!plant || !state) return <div class="section waiting" aria-busy="true" />;
  const t = w.value.well;
  const units = system.value;
  const deepest_m = plant.well_depth_m * 1.02;
  const y = (depth_m: number) => yOf(depth_m, deepest_m);
  const rest_m = plant.static_level_m + state.shift_m;
  const level_m = Math.min(state.now.level_m, plant.well_depth_m);
  const most = inUnit(deepest_m, "length", units);
  const depth = (metres: number) => text(metres, "length", units, 0);

  const drag = (event: PointerEvent) => {
    const box = svg.current!.getBoundingClientRect();
    const at = ((event.clientY - box.top) / box.height) * 740;
    const depth_m = ((at - ground) / (bottom - ground)) * deepest_m;
    const held_m = Math.min(Math.max(depth_m, 0), plant.well_depth_m - 0.05);
    act({ act: "water", value: held_m - plant.static_level_m });
  };
  const key = (event: KeyboardEvent) => {
    const step = toSi(event.shiftKey ? 10 : 1, "length", units);
    const by = { ArrowUp: -step, ArrowDown: step, PageUp: -10 * step, PageDown: 10 * step }[event.key];
    if (by === undefined) return;
    event.preventDefault();
    const wanted_m = Math.min(Math.max(plant.static_level_m + (inputs.value.water ?? state.shift_m) + by, 0), plant.well_depth_m - 0.05);
    act({ act: "water", value: wanted_m - plant.static_level_m });
  };

  const labels = spread(
    [
      { key: "rest", y: y(rest_m), text: `${t.waterRest} ${depth(rest_m)}` },
      { key: "now", y: y(level_m), text: `${t.waterNow} ${text(level_m, "length", units, 1)}` },
      { key: "pump", y: y(plant.setting_m) - 20, text: `${t.pump} ${depth(plant.setting_m)}` },
      { key: "bottom", y: y(plant.well_depth_m), text: `${t.bottom} ${depth(plant.well_depth_m)}` },
    ],
    30,
    ground + 48,
    bottom,
  );
  const turning = state.now.speed_hz > 0;
  const flows = state.now.pumped_m3_s > 1e-7;
  const bubbles = state.now.wetness < 0.995;

  return (
    <svg ref={svg} class="section" viewBox="0 0 480 740" role="group" aria-label={t.title}>
      <defs>
        <pattern id="soil" width="16" height="16" patternUnits="userSpaceOnUse" patternTransform="rotate(35)">
          <rect width="16" height="16" class="soil" />
          <path d="M0 4h7M9 12h6" class="grain" />
        </pattern>
        <pattern id="rock" width="26" height="22" patternUnits="userSpaceOnUse">
          <rect width="26" height="22" class="rock" />
          <path d="M2 6h9M14 15h9M13 3v6M5 13v6" class="grain" />
        </pattern>
        <pattern id="wet" width="12" height="10" patternUnits="userSpaceOnUse">
          <rect width="12" height="10" class="water" />
          <path d="M0 5q3 -3 6 0t6 0" class="wave" />
        </pattern>
      </defs>
      <rect x="0" y={ground} width="480" height="70" fill="url(#soil)" />
      <rect x="0" y={ground + 70} width="480" height={740 - ground - 70} fill="url(#rock)" />
      <path d={`M0 ${y(rest_m)}H${left}M${right} ${y(rest_m)}H480`} class="restline" />

      <rect x={left} y={ground - 12} width={right - left} height={y(plant.well_depth_m) - ground + 12} class="bore" />
      <rect x={left} y={y(level_m)} width={right - left} height={Math.max(0, y(plant.well_depth_m) - y(level_m))} fill="url(#wet)" />
      <path d={`M${left} ${ground - 14}V${y(plant.well_depth_m)}M${right} ${ground - 14}V${y(plant.well_depth_m)}`} class="casing" />
      <path d={`M${left} ${y(plant.well_depth_m)}H${right}`} class="casing thin" />
      {plant.fracture_m > 0 && <path d={`M${right} ${y(plant.fracture_m)}l30 -5l24 7l40 -4`} class="fracture" />}

      <path d={`M144 ${y(plant.setting_m) - 44}V${ground + 26}H250`} class="pipe" />
      {flows && <path d={`M144 ${y(plant.setting_m) - 44}V${ground + 26}H250`} class="flow" stroke-dashoffset={dashes(state.now.t, state.now.pumped_m3_s, plant.best_flow_m3_s)} />}
      <g class={turning ? "pump turns" : "pump"}>
        <rect x="126" y={y(plant.setting_m) - 44} width="36" height="30" rx="4" />
        <rect x="130" y={y(plant.setting_m) - 10} width="28" height="40" rx="4" />
        <path d={`M128 ${y(plant.setting_m) - 12}h32`} class="intake" />
        {turning && <path d={`M136 ${y(plant.setting_m) - 36}l16 14m0 -14l-16 14`} class="vane" />}
      </g>
      {bubbles && [0, 1, 2, 3].map((i) => <circle cx={120 + i * 16} cy={y(plant.setting_m) - 4 - ((state.now.t * 30 + i * 17) % 26)} r="4" class="bubble" />)}

      {ticks(most, 8).slice(1).map((mark) => (
        <g class="ruler">
          <path d={`M82 ${y(toSi(mark, "length", units))}h18`} />
          <text x="76" y={y(toSi(mark, "length", units)) + 6} text-anchor="end">
            {mark}
          </text>
        </g>
      ))}
      <text x="76" y={ground + 28} text-anchor="end" class="unit">
        {shownIn("length", units).unit}
      </text>

      {labels.map((each) => (
        <g class={`label ${each.key}`}>
          <path d={`M${right + 6} ${each.y}L252 ${each.at}`} />
          <rect x="252" y={each.at - 15} width="222" height="29" rx="4" />
          <text x="262" y={each.at + 6}>
            {each.text}
          </text>
        </g>
      ))}

      <g
        class="handle"
        role="slider"
        tabindex={0}
        aria-label={`${t.water}. ${t.waterHelp}`}
        aria-orientation="vertical"
        aria-valuemin={0}
        aria-valuemax={Math.round(inUnit(plant.well_depth_m, "length", units))}
        aria-valuenow={Math.round(inUnit(rest_m, "length", units))}
        aria-valuetext={depth(rest_m)}
        onKeyDown={key}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          drag(event);
        }}
        onPointerMove={(event) => event.currentTarget.hasPointerCapture(event.pointerId) && drag(event)}
      >
        <rect x="0" y={y(rest_m) - 26} width="184" height="52" class="reach" />
        <path d={`M4 ${y(rest_m)}l14 -16h58v32h-58z`} class="grip" />
        <path d={`M44 ${y(rest_m) - 9}l7 -7l7 7M44 ${y(rest_m) + 9}l7 7l7 -7M24 ${y(rest_m)}h44`} class="arrows" />
      </g>
      <Surface plant={plant} state={state} burst={inputs.value[`outlet.${outletPlace.burst}`] ?? 0} />
    </svg>
  );
}
