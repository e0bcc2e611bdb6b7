import { textParts } from "@armwright/drawing";
import type { Dimension } from "@armwright/engine";
import { type ReactNode, useId } from "react";
import { useBench } from "../app/use-bench.ts";
import { useSize } from "../board/use-size.ts";
import "../styles/curves.css";
import { tidy, unitShown } from "../words/shown.ts";
import { ticksOf } from "./ticks.ts";

export interface CurvePoint {
  readonly x: number;
  readonly y: number;
}

export interface Curve {
  readonly name: string;
  /** Where there is no value the line is broken. */
  readonly points: readonly (Pick<CurvePoint, "x"> & { readonly y: number | null })[];
  /** A place on it that is told apart, e.g. where the car sits. */
  readonly dot?: CurvePoint;
}

/** An upright across the chart. */
export interface Upright {
  readonly x: number;
  readonly label: string;
  readonly isStop?: boolean;
}

export interface CurveAxis {
  readonly title: string;
  readonly dimension: Dimension;
  /** SI; an axis may run backwards. */
  readonly from: number;
  readonly to: number;
}

interface Props {
  /** What the chart shows, in one sentence: read aloud in its place. */
  readonly label: string;
  readonly across: CurveAxis;
  readonly up: CurveAxis;
  readonly curves: readonly Curve[];
  readonly uprights?: readonly Upright[];
}

const HEIGHT = 212;
const TOP = 8;
const FOOT = 42;
const RIGHT = 10;
/** Width of a digit at the label's size, px. */
const DIGIT = 8;
const LABEL_LINE = 16;

/** A chart on graph paper: the first curve solid, the second dashed, units at both axes. */
export function CurveChart({ label, across, up, curves, uprights = [] }: Props): ReactNode {
  const [ref, size] = useSize();
  const units = useBench((state) => state.units);
  const clip = useId();
  const width = size?.width ?? 0;
  const high = ticksOf(up.from, up.to, up.dimension, units, 5);
  const left = 10 + DIGIT * Math.max(2, ...high.map(({ text }) => text.length));
  const wide = ticksOf(across.from, across.to, across.dimension, units, Math.max(2, Math.floor((width - left) / 52)));
  const bottom = HEIGHT - FOOT;
  const right = width - RIGHT;
  const atX = (x: number): number => left + ((x - across.from) / (across.to - across.from)) * (right - left);
  const atY = (y: number): number => bottom - ((y - up.from) / (up.to - up.from)) * (bottom - TOP);
  const unitOfAxis = ({ dimension }: CurveAxis): string => {
    const unit = unitShown(dimension, units);
    return unit === "" ? "" : `, ${unit}`;
  };
  return (
    <figure className="curve-chart">
      <figcaption className="small">
        {up.title}
        {unitOfAxis(up)}
        {curves.length > 1 &&
          curves.map(({ name }, i) => (
            <span className="curve-name" key={name}>
              <svg width="26" height="10" aria-hidden="true">
                <path className={i === 0 ? "curve" : "curve second"} d="M0 5H26" />
              </svg>
              {name}
            </span>
          ))}
      </figcaption>
      <div ref={ref}>
        {width > 80 && (
          <svg width={width} height={HEIGHT} role="img" aria-label={label}>
            <clipPath id={clip}>
              <rect x={left} y={TOP} width={right - left} height={bottom - TOP} />
            </clipPath>
            {wide.map(({ value, text }) => (
              <g key={value}>
                <path
                  className={isZero(value) ? "paper-line zero" : "paper-line"}
                  d={`M${atX(value)} ${TOP}V${bottom}`}
                />
                <Numeral x={atX(value)} y={bottom + 17} anchor="middle" text={text} />
              </g>
            ))}
            {high.map(({ value, text }) => (
              <g key={value}>
                <path
                  className={isZero(value) ? "paper-line zero" : "paper-line"}
                  d={`M${left} ${atY(value)}H${right}`}
                />
                <Numeral x={left - 6} y={atY(value) + 5} anchor="end" text={text} />
              </g>
            ))}
            <g clipPath={`url(#${clip})`}>
              {curves.map(({ name, points }, i) => (
                <path key={name} className={i === 0 ? "curve" : "curve second"} d={pathThrough(points, atX, atY)} />
              ))}
            </g>
            <rect className="curve-frame" x={left} y={TOP} width={right - left} height={bottom - TOP} />
            {uprights
              .filter(({ x }) => atX(x) >= left - 1 && atX(x) <= right + 1)
              .map((upright, i) => (
                <UprightLine
                  key={upright.label}
                  upright={upright}
                  x={atX(upright.x)}
                  line={i}
                  from={TOP}
                  to={bottom}
                  middle={(left + right) / 2}
                />
              ))}
            {curves.map(({ name, dot }, i) =>
              dot ? (
                <circle
                  key={name}
                  className={i === 0 ? "curve-dot" : "curve-dot open"}
                  cx={atX(dot.x)}
                  cy={atY(dot.y)}
                  r={4}
                />
              ) : null,
            )}
            <text className="curve-title" x={right} y={HEIGHT - 6} textAnchor="end">
              {across.title}
              {unitOfAxis(across)}
            </text>
          </svg>
        )}
      </div>
    </figure>
  );
}

function pathThrough(points: Curve["points"], atX: (x: number) => number, atY: (y: number) => number): string {
  let isDown = false;
  return points
    .map(({ x, y }) => {
      const pen = isDown ? "L" : "M";
      isDown = y !== null;
      return y === null ? "" : `${pen}${atX(x).toFixed(1)} ${atY(y).toFixed(1)}`;
    })
    .join("");
}

const isZero = (value: number): boolean => Math.abs(value) < 1e-12;

function Numeral({
  x,
  y,
  anchor,
  text,
}: {
  readonly x: number;
  readonly y: number;
  readonly anchor: "middle" | "end";
  readonly text: string;
}): ReactNode {
  return (
    <text className="numeral" x={x} y={y} textAnchor={anchor}>
      {textParts(tidy(text)).map((piece) =>
        piece.fraction ? (
          <tspan className="q" key={piece.text}>
            {piece.text}
          </tspan>
        ) : (
          piece.text
        ),
      )}
    </text>
  );
}

function UprightLine({
  upright: { label, isStop },
  x,
  line,
  from,
  to,
  middle,
}: {
  readonly upright: Upright;
  readonly x: number;
  readonly line: number;
  readonly from: number;
  readonly to: number;
  readonly middle: number;
}): ReactNode {
  const isLeft = x > middle;
  return (
    <g className={isStop ? "upright stop" : "upright"}>
      <path d={`M${x} ${from}V${to}`} />
      <text x={isLeft ? x - 5 : x + 5} y={from + 14 + line * LABEL_LINE} textAnchor={isLeft ? "end" : "start"}>
        {label}
      </text>
    </g>
  );
}
