// What can be done to the well: big enough for a glove.
import { useComputed } from "@preact/signals";
import { act, inputs, nameOf, openLive, outletPlace, pace, resetDrive, scene, skip, told, watching } from "../state/live";
import { system, w } from "../state/store";
import { inUnit, text, toSi } from "../state/units";
import { titleOf } from "../views/parts";
import { saidOf } from "./said";

function Slide(props: { id: string; label: string; value: number; least: number; most: number; step: number; says: string; change: (value: number) => void }) {
  return (
    <div class="slide">
      <label for={props.id}>
        {props.label} <output>{props.says}</output>
      </label>
      <input id={props.id} type="range" min={props.least} max={props.most} step={props.step} value={props.value} aria-valuetext={props.says} onInput={(event) => props.change(Number(event.currentTarget.value))} />
    </div>
  );
}

function Switch({ label, on, says, turn }: { label: string; on: boolean; says: string; turn: (on: boolean) => void }) {
  return (
    <button type="button" class={on ? "switch on" : "switch"} aria-pressed={on} onClick={() => turn(!on)}>
      <span>{label}</span> <b>{says}</b>
    </button>
  );
}

export function Controls() {
  const t = w.value.well;
  const plant = scene.value;
  const shift_m = useComputed(() => told.value?.shift_m).value; // of all that is told, frame by frame, no more is shown
  if (!plant || shift_m === undefined) return null;
  const units = system.value;
  const input = (name: string, otherwise: number) => inputs.value[name] ?? otherwise;
  const outlet = (place: number) => input(nameOf({ act: "outlet", outlet: place, value: 0 }), 0);
  const turn = (place: number, value: number) => act({ act: "outlet", outlet: place, value });
  const rest_m = plant.static_level_m + shift_m;
  const shift = Math.round(inUnit(shift_m, "length", units));
  const peak = text(plant.outlets[outletPlace.house]?.flow_m3_s, "flow", units, 1);
  return (
    <section class="controls" aria-labelledby="try-name">
      <h2 id="try-name">{t.tryIt}</h2>
      <div class="switches">
        <Switch label={t.tap} on={outlet(outletPlace.least) > 0} says={outlet(outletPlace.least) > 0 ? t.running : t.off} turn={(on) => turn(outletPlace.least, on ? 1 : 0)} />
        {plant.zones.map((name, i) => {
          const on = outlet(outletPlace.firstZone + i) > 0;
          return <Switch label={name || `${t.zone} ${i + 1}`} on={on} says={on ? t.running : t.off} turn={(next) => turn(outletPlace.firstZone + i, next ? 1 : 0)} />;
        })}
        <Switch label={t.valve} on={input("house_valve", 1) < 0.5} says={input("house_valve", 1) < 0.5 ? t.shut : t.open} turn={(on) => act({ act: "house_valve", value: on ? 0 : 1 })} />
        <Switch label={t.yard} on={input("yard_valve", 1) < 0.5} says={input("yard_valve", 1) < 0.5 ? t.shut : t.open} turn={(on) => act({ act: "yard_valve", value: on ? 0 : 1 })} />
      </div>
      <Slide id="house" label={t.houseDraw} value={Math.round(outlet(outletPlace.house) * 100)} least={0} most={100} step={5} says={`${Math.round(outlet(outletPlace.house) * 100)} % ${t.ofPeak} (${peak})`} change={(value) => turn(outletPlace.house, value / 100)} />
      <Slide id="burst" label={t.leak} value={Math.round(outlet(outletPlace.burst) * 100)} least={0} most={100} step={2} says={`${Math.round(outlet(outletPlace.burst) * 100)} %`} change={(value) => turn(outletPlace.burst, value / 100)} />
      <Slide
        id="water"
        label={t.water}
        value={Math.round(inUnit(rest_m, "length", units))}
        least={0}
        most={Math.floor(inUnit(plant.well_depth_m, "length", units))}
        step={1}
        says={`${text(rest_m, "length", units, 0)}${shift ? `, ${text(Math.abs(shift_m), "length", units, 0)} ${shift > 0 ? t.deeper : t.higher}` : `, ${t.asSaid}`}`}
        change={(value) => act({ act: "water", value: toSi(value, "length", units) - plant.static_level_m })}
      />
      <Slide id="gives" label={t.gives} value={Math.round(input("inflow", 1) * 100)} least={0} most={150} step={5} says={`${Math.round(input("inflow", 1) * 100)} % ${t.asNow}`} change={(value) => act({ act: "inflow", value: value / 100 })} />
      <Slide id="supply" label={t.supply} value={Math.round(input("supply", 1) * 100)} least={0} most={115} step={1} says={`${Math.round(input("supply", 1) * 100)} %`} change={(value) => act({ act: "supply", value: value / 100 })} />
      <div class="row">
        <button type="button" onClick={() => void resetDrive()}>
          {t.reset}
        </button>
        <button type="button" onClick={() => void openLive(watching.value)}>
          {t.afresh}
        </button>
      </div>
    </section>
  );
}

export function Pace() {
  const t = w.value.well;
  return (
    <div class="pace" role="group" aria-label={t.pace}>
      {[0, 1, 10, 60, 600].map((each) => (
        <button type="button" aria-pressed={pace.value === each} onClick={() => (pace.value = each)}>
          {each === 0 ? <span aria-label={t.paused}>❚❚</span> : `${each}×`}
        </button>
      ))}
      <button type="button" onClick={() => void skip()}>
        {t.toNext} »
      </button>
    </div>
  );
}

/// What the drive is doing, in words one can read from across the room.
export function Said() {
  const state = told.value;
  const t = w.value;
  const units = system.value;
  if (!state) return null;
  const { main, more } = saidOf(state.words, t);
  const bad = ["resting", "stopped", "waiting"].includes(state.words.mode);
  const now = state.now;
  return (
    <section class={bad ? "said bad" : "said"}>
      {watching.value && (
        <p class="note">
          {t.well.watching}: <b>{titleOf(watching.value.scenario)}</b>{" "}
          <button type="button" class="small" onClick={() => void openLive()}>
            {t.well.back}
          </button>
        </p>
      )}
      <p class="mode" role="status">
        {bad ? "■ " : state.words.mode === "asleep" ? "☾ " : "▶ "}
        {main}
      </p>
      {more.map((each) => (
        <p class="more">{each}</p>
      ))}
      {now.wetness < 0.995 && <p class="more">⚠ {t.well.air}</p>}
      {state.ending !== "finished" && <p class="more">⚠ {t.well.gaveWay}</p>}
      <dl class="gauges">
        <div>
          <dt>{t.well.pressure}</dt>
          <dd>{text(now.tee_pa, "pressure", units)}</dd>
        </div>
        <div>
          <dt>{t.well.speed}</dt>
          <dd>{text(now.speed_hz, "speed", units)}</dd>
        </div>
        <div>
          <dt>{t.well.current}</dt>
          <dd>{text(now.current_a, "current", units)}</dd>
        </div>
        <div>
          <dt>{t.well.flow}</dt>
          <dd>{text(now.pumped_m3_s, "flow", units)}</dd>
        </div>
        <div>
          <dt>{t.well.level}</dt>
          <dd>{text(now.level_m, "length", units)}</dd>
        </div>
        <div>
          <dt>{t.well.power}</dt>
          <dd>{text(now.power_w, "power", units)}</dd>
        </div>
      </dl>
    </section>
  );
}
