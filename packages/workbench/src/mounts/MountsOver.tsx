import { type BodyId, type Proposal, placeOn, type Vec3 } from "@armwright/engine";
import { type KeyboardEvent, memo, type PointerEvent, type ReactNode, useMemo, useRef } from "react";
import { inCar, locked } from "../board/handle-drag.ts";
import type { OverProps } from "../board/laid-over.ts";
import { oncePerFrame } from "../board/once-per-frame.ts";
import { bench, say } from "../store/bench.ts";
import { bigStepOf, stepOf } from "../words/shown.ts";
import type { Cloud } from "./cloud.ts";
import { DOT_SIZES, dotsOf, inView } from "./dots.ts";
import { beginZoneDrag, dragZone, endZoneDrag, giveUpZoneDrag, nudgeZone } from "./drag-zone.ts";
import { holdZone, triedOf, useMounts } from "./mounts-store.ts";
import { designWay, type ZoneGrip, type ZoneShape, zoneEdges, zoneGrips, zoneShapes } from "./zone.ts";

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Half of a handle's invisible target, px. */
const REACH = 18;

/** Over the drawing: zones to be dragged, everywhere that fits as dots, and the place that is tried. */
export function MountsOver({ view, sheet, size, study, solved }: OverProps): ReactNode {
  const zones = useMounts((state) => state.zones);
  const clouds = useMounts(({ found }) => found?.clouds);
  const tried = useMounts(triedOf);
  const held = useMounts((state) => state.held);
  const { corner } = study;
  const { position } = solved;
  const at = useMemo(
    () =>
      (point: Vec3, on: BodyId = "chassis"): Spot => {
        const { across, up } = inView(view, placeOn(position, point, on));
        return { x: sheet.origin.x - across * sheet.scale, y: sheet.origin.y - up * sheet.scale };
      },
    [view, sheet, position],
  );
  if (!zones) return null;
  const grips = zoneGrips(corner, zones).filter(({ along }) => !along || isSeen(view, along));
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing is no set of fields.
    <svg
      className="mounts-over"
      width={size.width}
      height={size.height}
      viewBox={`0 0 ${sheet.width} ${sheet.height}`}
      role="group"
      aria-label="Zones for the shock's mounts"
    >
      {clouds && (
        <g className="region">
          <Dots cloud={clouds.upper} at={at} />
          <Dots cloud={clouds.lower} at={at} />
        </g>
      )}
      <g>
        {zoneShapes(corner, zones).map((shape) => (
          <Zone
            key={shape.id}
            shape={shape}
            isHeld={isOf(held, shape.id)}
            edges={edgesOf(shape, position, view, sheet)}
          />
        ))}
        {tried && <Tried place={tried} at={at} radius={halfOf(tried) * sheet.scale} />}
      </g>
      {grips.map((grip) => (
        <Handle
          key={grip.id}
          grip={grip}
          spot={at(grip.at, grip.on)}
          isHeld={held === grip.id}
          over={{ view, sheet, size, study, solved }}
        />
      ))}
    </svg>
  );
}

const isSeen = (view: OverProps["view"], along: Vec3): boolean => {
  const { across, up } = inView(view, along);
  return Math.hypot(across, up) > 0.3;
};

const isOf = (held: string | null, zone: string): boolean => held === zone || (held?.startsWith(`${zone}.`) ?? false);

const halfOf = ({ shock }: Proposal): number => Math.max(shock.bodyDiameter, shock.springDiameter) / 2;

const Dots = memo(function Dots({
  cloud,
  at,
}: {
  readonly cloud: Cloud;
  readonly at: (point: Vec3, on?: BodyId) => Spot;
}): ReactNode {
  const { paths } = dotsOf(cloud.points, cloud.shares, (point, i) => at(point, cloud.on?.[i]));
  return paths.map((path, i) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: dots have no name but their size.
    <path key={i} className="dots" d={path} strokeWidth={DOT_SIZES[i]} />
  ));
});

type Edge = readonly [Spot, Spot];

function edgesOf(
  shape: ZoneShape,
  position: OverProps["solved"]["position"],
  view: OverProps["view"],
  sheet: OverProps["sheet"],
): readonly Edge[] {
  const spot = (point: Vec3): Spot => {
    const { across, up } = inView(view, point);
    return { x: sheet.origin.x - across * sheet.scale, y: sheet.origin.y - up * sheet.scale };
  };
  return zoneEdges(position, shape).map(([a, b]) => [spot(a), spot(b)]);
}

/** A zone: its edges in hairs, brackets at its outer corners, and what may be bolted there. */
function Zone({
  shape,
  edges,
  isHeld,
}: {
  readonly shape: ZoneShape;
  readonly edges: readonly Edge[];
  readonly isHeld: boolean;
}): ReactNode {
  const spots = edges.flat();
  const left = Math.min(...spots.map(({ x }) => x));
  const right = Math.max(...spots.map(({ x }) => x));
  const top = Math.min(...spots.map(({ y }) => y));
  const bottom = Math.max(...spots.map(({ y }) => y));
  const name = isHeld ? "zone held" : "zone";
  const hairs = edges.map(([a, b]) => `M${a.x} ${a.y}L${b.x} ${b.y}`).join("");
  if (shape.kind === "line") return <path className={`${name} stretch`} d={hairs} />;
  const r = Math.min(12, (right - left) / 3, (bottom - top) / 3);
  const bracket = (x: number, y: number, sx: number, sy: number): string => `M${x + sx * r} ${y}H${x}V${y + sy * r}`;
  return (
    <g className={name}>
      <path className="hairs" d={hairs} />
      <path
        className="brackets"
        d={
          bracket(left, top, 1, 1) +
          bracket(right, top, -1, 1) +
          bracket(left, bottom, 1, -1) +
          bracket(right, bottom, -1, -1)
        }
      />
      <text x={left} y={top - 6}>
        {shape.label}
      </text>
    </g>
  );
}

/** The shock as it would hang, in pencil. */
function Tried({
  place,
  at,
  radius,
}: {
  readonly place: Proposal;
  readonly at: (point: Vec3, on?: BodyId) => Spot;
  readonly radius: number;
}): ReactNode {
  const a = at(place.upper);
  const b = at(place.lower.point, place.lower.on);
  const size = Math.max(1, Math.hypot(b.x - a.x, b.y - a.y));
  const along = { x: (b.x - a.x) / size, y: (b.y - a.y) / size };
  const side = (end: Spot, inset: number, sign: number): string =>
    `${end.x + along.x * inset - along.y * radius * sign} ${end.y + along.y * inset + along.x * radius * sign}`;
  const inset = Math.min(radius, size / 4);
  return (
    <g className="tried">
      <path
        d={`M${side(a, inset, 1)}L${side(b, -inset, 1)}L${side(b, -inset, -1)}L${side(a, inset, -1)}zM${a.x} ${a.y}L${b.x} ${b.y}`}
      />
      {[a, b].map(({ x, y }, i) => (
        <circle key={i === 0 ? "upper" : "lower"} cx={x} cy={y} r={5} />
      ))}
      <text x={a.x + 10} y={a.y - 8}>
        tried
      </text>
    </g>
  );
}

/** A zone's grip, for the hand and for the keys. */
function Handle({
  grip,
  spot,
  isHeld,
  over,
}: {
  readonly grip: ZoneGrip;
  readonly spot: Spot;
  readonly isHeld: boolean;
  readonly over: OverProps;
}): ReactNode {
  const from = useRef<Spot | null>(null);
  const way = (right: number, down: number): Vec3 =>
    designWay(over.solved.position, grip.on, inCar(over.view, right, down));
  const take = (event: PointerEvent<SVGCircleElement>): void => {
    if (event.button !== 0) return;
    event.preventDefault();
    event.stopPropagation();
    event.currentTarget.setPointerCapture(event.pointerId);
    event.currentTarget.focus({ preventScroll: true });
    from.current = { x: event.clientX, y: event.clientY };
    beginZoneDrag(grip);
  };
  const drag = (event: PointerEvent<SVGCircleElement>): void => {
    const start = from.current;
    if (!start) return;
    const per = over.sheet.width / over.size.width / over.sheet.scale;
    const right = (event.clientX - start.x) * per;
    const down = (event.clientY - start.y) * per;
    const isLocked = event.shiftKey;
    oncePerFrame(() => dragZone(way(...(isLocked ? locked(right, down) : ([right, down] as const)))));
  };
  const letGo = (isGivenUp: boolean): void => {
    if (!from.current) return;
    from.current = null;
    oncePerFrame.now();
    if (isGivenUp) giveUpZoneDrag();
    else endZoneDrag();
  };
  const press = (event: KeyboardEvent<SVGCircleElement>): void => {
    if (event.key === "Escape") letGo(true);
    const arrow = ARROWS[event.key];
    if (!arrow) return;
    event.preventDefault();
    event.stopPropagation();
    const { units } = bench.getState();
    const step = event.shiftKey ? bigStepOf(units) : stepOf(units);
    nudgeZone(grip, way(arrow[0] * step, arrow[1] * step));
    say(grip.label);
  };
  return (
    <g className={isHeld ? "zone-grip held" : "zone-grip"}>
      <path d={grip.along ? gripMark(spot, 4) : gripMark(spot, 6)} />
      {/* biome-ignore lint/a11y/useSemanticElements: a button cannot stand in a drawing. */}
      <circle
        cx={spot.x}
        cy={spot.y}
        r={REACH}
        tabIndex={0}
        role="button"
        aria-label={`${grip.label}: arrow keys move it`}
        data-zone={grip.id}
        onFocus={() => holdZone(grip.id)}
        onBlur={() => holdZone(null)}
        onPointerDown={take}
        onPointerMove={drag}
        onPointerUp={() => letGo(false)}
        onPointerCancel={() => letGo(true)}
        onKeyDown={press}
      />
    </g>
  );
}

/** A small square on its corner. */
const gripMark = ({ x, y }: Spot, r: number): string => `M${x} ${y - r}L${x + r} ${y}L${x} ${y + r}L${x - r} ${y}z`;

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
