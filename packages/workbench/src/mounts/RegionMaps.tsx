import type { Vec3 } from "@armwright/engine";
import { type ReactNode, useMemo } from "react";
import { useBench } from "../app/use-bench.ts";
import type { ViewName } from "../store/bench-state.ts";
import { Reading } from "../words/Reading.tsx";
import { shownLength, unitShown } from "../words/shown.ts";
import { DOT_SIZES, dotsOf, inView } from "./dots.ts";
import type { Judgement } from "./judge-job.ts";
import { useMounts } from "./mounts-store.ts";

const SIZE = 136;
const EDGE = 9;

/** Everywhere that either mount may be: the upper from behind and from the left, the lower from above. */
export function RegionMaps({ found }: { readonly found: Judgement }): ReactNode {
  return (
    <div className="region-maps">
      <RegionMap found={found} which="upper" view="rear" title="upper mount, from behind" />
      <RegionMap found={found} which="upper" view="left" title="upper mount, from the left" />
      <RegionMap found={found} which="lower" view="top" title="lower mount, from above" />
    </div>
  );
}

interface MapProps {
  readonly found: Judgement;
  readonly which: "upper" | "lower";
  readonly view: ViewName;
  readonly title: string;
}

const WORDS: Readonly<Record<ViewName, readonly [across: string, up: string]>> = {
  rear: ["out", "up"],
  left: ["forward", "up"],
  top: ["out", "forward"],
};

function RegionMap({ found, which, view, title }: MapProps): ReactNode {
  const units = useBench((state) => state.units);
  const looked = useMounts((state) => state.looked);
  const cloud = found.clouds[which];
  const { frame, paths } = useMemo(() => {
    const fitted = frameOf(cloud.points, view);
    return { frame: fitted, paths: dotsOf(cloud.points, cloud.shares, fitted.at).paths };
  }, [cloud, view]);
  const unit = unitShown("length", units);
  const [across, up] = WORDS[view];
  const reach = ([low, high]: readonly [number, number]): string => {
    const [a, b] = [low, high].map((metres) => shownLength(metres, units, { denominator: 2 }));
    return a === b ? `${a}` : `${a} to ${b}`;
  };
  return (
    <figure>
      <svg viewBox={`0 0 ${SIZE} ${SIZE}`} role="img" aria-label={`Places that fit: ${title}`}>
        <path className="map-frame" d={`M.5 .5H${SIZE - 0.5}V${SIZE - 0.5}H.5z`} />
        {paths.map((path, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: dots have no name but their size.
          <path key={i} className="dots" d={path} strokeWidth={DOT_SIZES[i]} />
        ))}
        {found.best.map((place, i) => {
          const { x, y } = frame.at(which === "upper" ? place.upper : place.lower.point);
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a place's number is its name.
            <g key={i} className={i === looked ? "mark-place on" : "mark-place"}>
              <circle cx={x} cy={y} r={i === looked ? 7 : 5.5} />
              <text x={x} y={y} dy="0.36em" textAnchor="middle">
                {i + 1}
              </text>
            </g>
          );
        })}
      </svg>
      <figcaption className="small quiet">
        {title}: <Reading text={reach(frame.across)} /> {unit} {across}, <Reading text={reach(frame.up)} /> {unit} {up}
      </figcaption>
    </figure>
  );
}

/** Fits the points into the picture, one scale both ways. */
function frameOf(points: readonly Vec3[], view: ViewName) {
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const point of points) {
    const { across, up } = inView(view, point);
    left = Math.min(left, across);
    right = Math.max(right, across);
    low = Math.min(low, up);
    high = Math.max(high, up);
  }
  const scale = (SIZE - 2 * EDGE) / Math.max(right - left, high - low, 0.05);
  const middle = { across: (left + right) / 2, up: (low + high) / 2 };
  const at = (point: Vec3): { readonly x: number; readonly y: number } => {
    const { across, up } = inView(view, point);
    // Out is to the left as seen from behind and from above, forward is to the left as seen from the left.
    return {
      x: Math.round((SIZE / 2 - (across - middle.across) * scale) * 10) / 10,
      y: Math.round((SIZE / 2 - (up - middle.up) * scale) * 10) / 10,
    };
  };
  return { at, across: [left, right] as const, up: [low, high] as const };
}
