// Pressure, speed, current, flow and level over the last minutes, each on its own strip.
import { effect, useComputed } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import uPlot from "uplot";
import "uplot/dist/uPlot.min.css";
import { beside } from "./beside";
import { ghost, type Point, told, trace } from "../state/live";
import { system, w } from "../state/store";
import { clock, inUnit, type Kind, shownIn, text } from "../state/units";

type NumberOf = Exclude<keyof Point, "mode" | "t">;

interface Strip {
  name: "pressure" | "speed" | "current" | "flow" | "level";
  kind: Kind;
  of: NumberOf;
  least: number; // smallest span of the axis, SI
  down?: boolean; // depth: deeper is lower
}

const strips: Strip[] = [
  { name: "pressure", kind: "pressure", of: "tee_pa", least: 100e3 },
  { name: "speed", kind: "speed", of: "speed_hz", least: 20 },
  { name: "current", kind: "current", of: "current_a", least: 2 },
  { name: "flow", kind: "flow", of: "pumped_m3_s", least: 2e-4 },
  { name: "level", kind: "length", of: "level_m", least: 1, down: true },
];

const ink = "#171612";
const quiet = "#8a8474";

function StripChart({ strip }: { strip: Strip }) {
  const box = useRef<HTMLDivElement>(null);
  const units = system.value;
  useEffect(() => {
    const here = box.current!;
    const range = (_: uPlot, low: number | null, high: number | null): [number, number] => {
      const span = inUnit(strip.least, strip.kind, units) - inUnit(0, strip.kind, units);
      const [a, b] = [low ?? 0, high ?? 0];
      const middle = (a + b) / 2;
      const half = Math.max((b - a) * 0.55, span / 2);
      return [Math.max(strip.down ? -Infinity : 0, middle - half), Math.max(strip.down ? -Infinity : 2 * half, middle + half)];
    };
    const plot = new uPlot(
      {
        width: here.clientWidth || 300,
        height: 84,
        cursor: { show: false },
        legend: { show: false },
        scales: { x: { time: false }, y: { range, dir: strip.down ? -1 : 1 } },
        axes: [
          { show: strip.name === "level", stroke: ink, size: 22, font: "13px system-ui", values: (_, marks) => marks.map((mark) => clock(mark)), grid: { stroke: "#0002" } },
          { stroke: ink, size: 52, font: "13px system-ui", grid: { stroke: "#0002" }, splits: (_, __, low, high) => [low + (high - low) * 0.15, (low + high) / 2, high - (high - low) * 0.15], values: (_, marks) => marks.map((mark) => mark.toFixed(shownIn(strip.kind, units).digits > 1 ? 1 : 0)) },
        ],
        series: [{}, { stroke: ink, width: 2, points: { show: false } }, { stroke: quiet, width: 2, dash: [6, 5], points: { show: false } }],
      },
      [[], [], []],
      here,
    );
    let due = 0;
    const stop = effect(() => {
      const [points, others] = [trace.value, ghost.value];
      if (performance.now() < due) return;
      due = performance.now() + 90;
      const drawn = (figure: number) => inUnit(figure, strip.kind, units);
      plot.setData([points.map((p) => p.t), points.map((p) => drawn(p[strip.of])), beside(points, others.t, (others[strip.of] ?? []).map(drawn))]);
    });
    const watch = new ResizeObserver(() => plot.setSize({ width: here.clientWidth || 300, height: 84 }));
    watch.observe(here);
    return () => {
      stop();
      watch.disconnect();
      plot.destroy();
    };
  }, [strip, units]);
  const now = useComputed(() => text(told.value ? told.value.now[strip.of] : null, strip.kind, system.value));
  return (
    <figure class="strip">
      <figcaption>
        {w.value.well[strip.name]} <b>{now}</b>
      </figcaption>
      <div ref={box} class="plot" aria-hidden="true" />
    </figure>
  );
}

export function Traces() {
  const t = w.value.well;
  return (
    <section class="traces" aria-labelledby="traces-name">
      <h2 id="traces-name">{t.traces}</h2>
      {strips.map((strip) => (
        <StripChart key={strip.name} strip={strip} />
      ))}
      {ghost.value.t.length > 0 && <p class="note">┄ {t.ghost}</p>}
    </section>
  );
}
