import { drawHistory, type HistoryChart, type HistoryStrip, textParts } from "@armwright/drawing";
import { STANDARD_GRAVITY, type UnitSystem } from "@armwright/engine";
import { type PointerEvent, type ReactNode, useLayoutEffect, useMemo, useRef } from "react";
import { useBench } from "../app/use-bench.ts";
import { paint } from "../board/paint.ts";
import { useSize } from "../board/use-size.ts";
import { shownTravel } from "../words/shown.ts";
import { shownFigures, threeFigures } from "../words/three-figures.ts";
import { valueAt } from "./at-time.ts";
import type { LandingAnswer } from "./landing-job.ts";
import { type Made, useLanding } from "./landing-store.ts";
import { setPlaying, showTime } from "./use-playback.ts";

/** Histories on one time axis, read where the player stands; a press or a drag brings the player there. */
export function HistoryCharts({ made }: { readonly made: Made }): ReactNode {
  const [ref, size] = useSize();
  return (
    <div ref={ref} className="history">
      {size && size.width > 120 && <Drawn made={made} width={Math.floor(size.width)} />}
    </div>
  );
}

function Drawn({ made, width }: { readonly made: Made; readonly width: number }): ReactNode {
  const units = useBench((state) => state.units);
  const ink = useRef<SVGGElement>(null);
  const isHeld = useRef(false);
  const { history } = made.answer.landing;
  const strips = useMemo(() => stripsOf(made.answer, units), [made, units]);
  const chart = useMemo(() => drawHistory(history.time, strips, width, units), [history, strips, width, units]);
  useLayoutEffect(() => {
    if (ink.current) paint(ink.current, chart.parts, 1);
  }, [chart]);
  const go = (event: PointerEvent<SVGSVGElement>): void => {
    const box = event.currentTarget.getBoundingClientRect();
    const share = (event.clientX - box.left - chart.from.x) / (chart.to.x - chart.from.x);
    setPlaying(false);
    showTime(chart.from.time + share * (chart.to.time - chart.from.time));
  };
  return (
    <svg
      className="history-chart"
      width={width}
      height={chart.height}
      viewBox={`0 0 ${width} ${chart.height}`}
      role="img"
      aria-label={`Over time: ${strips.map(({ label, most }) => `${label}, ${most}`).join("; ")}`}
      onPointerDown={(event) => {
        isHeld.current = true;
        event.currentTarget.setPointerCapture(event.pointerId);
        go(event);
      }}
      onPointerMove={(event) => isHeld.current && go(event)}
      onPointerUp={() => {
        isHeld.current = false;
      }}
      onPointerCancel={() => {
        isHeld.current = false;
      }}
    >
      {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in a painted drawing takes the keyboard. */}
      <g ref={ink} aria-hidden="true" />
      <Marker made={made} chart={chart} strips={strips} />
    </svg>
  );
}

interface MarkerProps {
  readonly made: Made;
  readonly chart: HistoryChart;
  readonly strips: readonly HistoryStrip[];
}

/** Where the player stands: an upright through all, a dot on every curve, its value in the head. */
function Marker({ made, chart, strips }: MarkerProps): ReactNode {
  const units = useBench((state) => state.units);
  const time = useLanding((state) => state.time);
  const { from, to } = chart;
  const { history } = made.answer.landing;
  const x = from.x + ((time - from.time) / (to.time - from.time)) * (to.x - from.x);
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in it takes the keyboard.
    <g className="history-now" aria-hidden="true">
      {chart.strips.map(({ id, frame, low, high }, index) => {
        const strip = strips[index]!;
        const value = valueAt(history, strip.values, time);
        const y = frame.y + frame.height - ((value - low) / (high - low)) * frame.height;
        return (
          <g key={id}>
            <path d={`M${x} ${frame.y}v${frame.height}`} />
            <circle cx={x} cy={y} r={3.4} />
            <text x={frame.x + frame.width * 0.5} y={frame.y - 6} textAnchor="middle" data-now={id}>
              {textParts(sayValue(strip, value, units)).map((part, at) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: parts of one text have no other name.
                <tspan key={at} className={part.fraction ? "q" : undefined}>
                  {part.isBehindWhole ? `\u2009${part.text}` : part.text}
                </tspan>
              ))}
            </text>
          </g>
        );
      })}
    </g>
  );
}

function sayValue({ dimension, unit }: HistoryStrip, value: number, units: UnitSystem): string {
  if (dimension === "length") return shownTravel(value, units);
  if (unit !== undefined) return `${threeFigures(value)} ${unit}`;
  return shownFigures(value, dimension, units);
}

/** What is drawn, as far as it moved at all. */
function stripsOf({ landing, carried, stops }: LandingAnswer, units: UnitSystem): readonly HistoryStrip[] {
  const { history, peaks } = landing;
  const most = (value: number): string => `most ${shownFigures(value, "force", units)}`;
  const force = (id: keyof typeof peaks & keyof typeof history, label: string): HistoryStrip[] =>
    peaks[id].value > 0 ? [{ id, label, dimension: "force", values: history[id], most: most(peaks[id].value) }] : [];
  const used = `${shownTravel(landing.travel.bump, units)} to ${shownTravel(landing.travel.droop, units)}`;
  return [
    {
      id: "travel",
      label: "travel",
      dimension: "length",
      values: history.travel,
      levels: [
        { value: stops.bump, label: "bump stop", isStop: true },
        { value: stops.droop, label: "droop stop", isStop: true },
      ],
      most: used,
    },
    {
      id: "wheelLoad",
      label: "wheel load",
      dimension: "force",
      values: history.wheelLoad,
      levels: [{ value: carried, label: "standing" }],
      most: most(peaks.wheelLoad.value),
    },
    ...force("shockForce", "shock"),
    {
      id: "shockSpeed",
      label: "shock, in +",
      dimension: "speed",
      values: history.shockSpeed,
      most: `most ${shownFigures(Math.max(peaks.shockSpeedIn.value, peaks.shockSpeedOut.value), "speed", units)}`,
    },
    ...force("stopForce", "bump stop"),
    ...force("strapForce", "strap"),
    {
      id: "bodyAcceleration",
      label: "body, up +",
      dimension: "ratio",
      unit: "g",
      values: history.bodyAcceleration.map((value) => value / STANDARD_GRAVITY),
      most: `most ${threeFigures(peaks.bodyAcceleration.value / STANDARD_GRAVITY)} g`,
    },
  ];
}
