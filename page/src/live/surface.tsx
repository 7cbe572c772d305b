// What stands on the ground: house, tank, drive, taps, zones. Drawn larger than the depths.
import { inputs, outletPlace, type Scene, type Told } from "../state/live";
import { system, w } from "../state/store";
import { text } from "../state/units";
import { ground } from "./section";
import { dashes, tenths } from "./labels";
import { waterShare } from "./tank";

export function Surface({ plant, state, burst }: { plant: Scene; state: Told; burst: number }) {
  const t = w.value.well;
  const units = system.value;
  const valve = inputs.value.house_valve ?? 1;
  const yard = inputs.value.yard_valve ?? 1;
  const house = inputs.value[`outlet.${outletPlace.house}`] ?? 0;
  const tap = inputs.value[`outlet.${outletPlace.least}`] ?? 0;
  const supply = inputs.value.supply ?? 1;
  const drawn = state.now.drawn_m3_s > 1e-8;
  const share = waterShare(state.now.tee_pa, plant.precharge_pa);
  const tankHigh = 78;
  const tankTop = ground - 8 - tankHigh;
  const waterTop = tenths(tankTop + 3 + (tankHigh - 6) * (1 - share));
  const zoneOn = (i: number) => (inputs.value[`outlet.${outletPlace.firstZone + i}`] ?? 0) > 0;
  const resting = ["resting", "stopped", "waiting"].includes(state.words.mode);
  return (
    <g class="surface">
      <path d={`M0 ${ground}H${104}M${184} ${ground}H480`} class="groundline" />
      <rect x="102" y={ground - 22} width="84" height="10" rx="3" class="cap" />
      <path d={`M262 ${ground}V92L372 26L474 92V${ground}`} class="house" />
      <path d={`M250 ${ground + 26}H300V${ground - 14}M324 ${ground - 14}H448V128M392 ${ground - 14}V150`} class="pipe" />
      {drawn && valve > 0 && <path d={`M324 ${ground - 14}H448V128`} class="flow" stroke-dashoffset={dashes(state.now.t, state.now.drawn_m3_s, plant.outlets[outletPlace.house]?.flow_m3_s ?? 0)} />}

      <g class="tank">
        <rect x="274" y={tankTop} width="50" height={tankHigh} rx="20" class="shell" />
        <clipPath id="tank-inside">
          <rect x="277" y={tankTop + 3} width="44" height={tankHigh - 6} rx="17" />
        </clipPath>
        <rect x="277" y={waterTop} width="44" height={tankHigh} fill="url(#wet)" clip-path="url(#tank-inside)" />
        <path d={`M277 ${waterTop}h44`} class="bladder" />
      </g>
      <text x="299" y={tankTop - 8} text-anchor="middle" class="figure">
        {text(state.now.tee_pa, "pressure", units, 0)}
      </text>

      <g class={valve < 0.005 ? "valve shut" : "valve"}>
        <path d={`M338 ${ground - 24}l24 20v-20l-24 20z`} />
        <path d={`M350 ${ground - 14}v-18m-10 0h20`} />
      </g>
      <g class={yard < 0.005 ? "valve shut" : "valve"}>
        <path d={`M206 ${ground + 16}l24 20v-20l-24 20z`} />
      </g>

      <g class={tap > 0 ? "tap runs" : "tap"}>
        <path d="M392 150v-12h20v10M380 172h44l-6 14h-32z" />
        {tap > 0 && <path d="M412 150v20" class="jet" />}
      </g>
      <g class={house > 0 ? "tap runs" : "tap"}>
        <path d="M448 128V92h-20v8M416 100h24" />
        {house > 0 && [0, 1, 2, 3].map((i) => <path d={`M${419 + i * 6} 104l${(i - 1.5) * 3} ${12 + 26 * house}`} class="jet" />)}
      </g>

      {plant.zones.map((_, i) => (
        <g class={zoneOn(i) ? "tap runs" : "tap"}>
          <path d={`M${26 + i * 38} ${ground}v-18m-7 0h14`} />
          {zoneOn(i) && <path d={`M${26 + i * 38} ${ground - 20}q-12 -26 -22 -8M${26 + i * 38} ${ground - 20}q12 -26 22 -8M${26 + i * 38} ${ground - 20}v-22`} class="jet" />}
        </g>
      ))}
      {burst > 0 && <path d={`M262 ${ground + 22}l-14 -34M264 ${ground + 20}l0 -40M266 ${ground + 22}l14 -32`} class="jet burst" />}

      <g class={resting ? "drive rests" : "drive"}>
        <rect x="196" y="104" width="58" height="62" rx="5" />
        <path d={`M225 166V${ground - 17}H186M225 104V60H196V20`} class="wire" />
        <text x="225" y="130" text-anchor="middle">
          {state.now.speed_hz.toFixed(0)}
        </text>
        <text x="225" y="152" text-anchor="middle">
          Hz
        </text>
        <text x="190" y="40" text-anchor="end" class={supply < 0.9 ? "figure low" : "figure"}>
          ⚡ {(supply * 100).toFixed(0)} %
        </text>
      </g>
      {state.empty > 0.01 && (
        <text x="372" y="80" text-anchor="middle" class="figure">
          {t.lineEmpty} {(state.empty * 100).toFixed(0)} %
        </text>
      )}
    </g>
  );
}
