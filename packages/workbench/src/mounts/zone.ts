import {
  type BodyId,
  type Corner,
  type LowerZone,
  type Position,
  placeOn,
  type UpperZone,
  type Vec3,
} from "@armwright/engine";

/** Zones of both mounts, as the builder has drawn them. */
export interface Zones {
  readonly upper: UpperZone;
  readonly lower: readonly LowerZone[];
}

/** A zone as it is drawn: a box or a line, in the design position, on the body that carries it. */
export type ZoneShape = {
  /** `upper`, `lower.0`, `lower.1`, … */
  readonly id: string;
  readonly label: string;
  readonly on: BodyId;
} & (
  | { readonly kind: "box"; readonly low: Vec3; readonly high: Vec3 }
  | { readonly kind: "line"; readonly from: Vec3; readonly to: Vec3 }
);

/** A place where a zone can be taken hold of, in the design position. */
export interface ZoneGrip {
  /** `upper.all`, `upper.x+`, `lower.0.y-`, `lower.1.from`, … */
  readonly id: string;
  readonly zone: string;
  readonly label: string;
  readonly on: BodyId;
  readonly at: Vec3;
  /** Unit vector that it moves along; left out where the whole zone moves any way. */
  readonly along?: Vec3;
}

const AXES = ["x", "y", "z"] as const;
const FACES = {
  x: ["rear face", "front face"],
  y: ["inner face", "outer face"],
  z: ["lower face", "upper face"],
} as const;

/** A box is never made thinner than this, m. */
const THINNEST = 0.0254 / 16;

export function zoneShapes(corner: Corner, { upper, lower }: Zones): readonly ZoneShape[] {
  return [upperShape(corner, upper), ...lower.map((zone, i) => lowerShape(corner, zone, i))].flatMap(
    (shape) => shape ?? [],
  );
}

function upperShape(corner: Corner, zone: UpperZone): ZoneShape | null {
  const names = { id: "upper", label: "upper mount", on: "chassis" } as const;
  if (zone.kind === "box") return { ...names, kind: "box", ...ordered(zone.from, zone.to) };
  const tube = corner.car.keepOuts.find(({ name }) => name === zone.keepOut);
  if (tube?.shape !== "tube") return null;
  return { ...names, kind: "line", from: add(tube.from, zone.standoff), to: add(tube.to, zone.standoff) };
}

function lowerShape(corner: Corner, zone: LowerZone, index: number): ZoneShape | null {
  const id = `lower.${index}`;
  if (zone.kind === "box")
    return { id, label: "lower mount", on: zone.on, kind: "box", ...ordered(zone.from, zone.to) };
  const member = memberOf(corner, zone.member);
  if (!member) return null;
  const { from, to } = member;
  const over = upSquareTo(unit(sub(to.point, from.point)));
  const at = (fraction: number): Vec3 =>
    add(add(from.point, times(sub(to.point, from.point), fraction)), times(over, zone.standoff));
  return {
    id,
    label: `lower mount, ${member.label}`,
    on: member.body as BodyId,
    kind: "line",
    from: at(zone.from),
    to: at(zone.to),
  };
}

const memberOf = (corner: Corner, id: string) =>
  corner.members.find((member) => member.id === id && member.body !== "link");

/** The whole of a box and its six faces; the two ends of a stretch of an arm's tube. */
export function zoneGrips(corner: Corner, zones: Zones): readonly ZoneGrip[] {
  return zoneShapes(corner, zones).flatMap((shape): readonly ZoneGrip[] => {
    const { id, label, on } = shape;
    if (shape.kind === "box") {
      const middle = times(add(shape.low, shape.high), 0.5);
      return [
        { id: `${id}.all`, zone: id, label: `zone of the ${label}, the whole`, on, at: middle },
        ...AXES.flatMap((axis) =>
          (["-", "+"] as const).map((sign, side) => ({
            id: `${id}.${axis}${sign}`,
            zone: id,
            label: `zone of the ${label}, ${FACES[axis][side]}`,
            on,
            at: { ...middle, [axis]: sign === "-" ? shape.low[axis] : shape.high[axis] },
            along: { x: 0, y: 0, z: 0, [axis]: 1 },
          })),
        ),
      ];
    }
    if (id === "upper") return [];
    const along = unit(sub(shape.to, shape.from));
    return [
      { id: `${id}.from`, zone: id, label: `zone of the ${label}, inner end`, on, at: shape.from, along },
      { id: `${id}.to`, zone: id, label: `zone of the ${label}, outer end`, on, at: shape.to, along },
    ];
  });
}

/** The zones with one grip moved by a way in the design position; what moves lands on the snap step. */
export function movedZones(corner: Corner, zones: Zones, grip: ZoneGrip, way: Vec3, step: number): Zones {
  const along = grip.along ? dot(way, grip.along) : 0;
  const snap = (metres: number): number => Math.round(metres / step) * step;
  const movedBox = (box: { readonly from: Vec3; readonly to: Vec3 }): { readonly from: Vec3; readonly to: Vec3 } => {
    const { low, high } = ordered(box.from, box.to);
    const face = /\.([xyz])([-+])$/.exec(grip.id);
    if (!face) {
      const by = { x: snap(low.x + way.x) - low.x, y: snap(low.y + way.y) - low.y, z: snap(low.z + way.z) - low.z };
      return { from: add(low, by), to: add(high, by) };
    }
    const axis = face[1] as "x" | "y" | "z";
    return face[2] === "-"
      ? { from: { ...low, [axis]: Math.min(snap(low[axis] + along), high[axis] - THINNEST) }, to: high }
      : { from: low, to: { ...high, [axis]: Math.max(snap(high[axis] + along), low[axis] + THINNEST) } };
  };
  if (grip.zone === "upper")
    return zones.upper.kind === "box" ? { ...zones, upper: { kind: "box", ...movedBox(zones.upper) } } : zones;
  const index = Number(grip.zone.slice("lower.".length));
  const lower = zones.lower.map((zone, i): LowerZone => {
    if (i !== index) return zone;
    if (zone.kind === "box") return { ...zone, ...movedBox(zone) };
    const member = memberOf(corner, zone.member);
    if (!member) return zone;
    const length = size(sub(member.to.point, member.from.point));
    const fraction = (old: number): number => snap(old * length + along) / length;
    return grip.id.endsWith(".from")
      ? { ...zone, from: Math.min(Math.max(0, fraction(zone.from)), zone.to) }
      : { ...zone, to: Math.max(Math.min(1, fraction(zone.to)), zone.from) };
  });
  return { ...zones, lower };
}

/** A way on the car as it stands now, as it is in the design position of a body. */
export function designWay(position: Position, on: BodyId, way: Vec3): Vec3 {
  const r = position.poses[on]?.rotation;
  if (!r) return way;
  return {
    x: r[0] * way.x + r[3] * way.y + r[6] * way.z,
    y: r[1] * way.x + r[4] * way.y + r[7] * way.z,
    z: r[2] * way.x + r[5] * way.y + r[8] * way.z,
  };
}

/** The edges of a zone where they are now. */
export const zoneEdges = (position: Position, shape: ZoneShape): readonly (readonly [Vec3, Vec3])[] =>
  zoneBoxEdges(shape).map(([a, b]) => [placeOn(position, a, shape.on), placeOn(position, b, shape.on)]);

/** The twelve edges of a box, or the one of a line, in the design position. */
export function zoneBoxEdges(shape: ZoneShape): readonly (readonly [Vec3, Vec3])[] {
  if (shape.kind === "line") return [[shape.from, shape.to]];
  const { low, high } = shape;
  const corner = (i: number, j: number, k: number): Vec3 => ({
    x: i ? high.x : low.x,
    y: j ? high.y : low.y,
    z: k ? high.z : low.z,
  });
  return [0, 1].flatMap((i) =>
    [0, 1].flatMap((j): (readonly [Vec3, Vec3])[] => [
      [corner(0, i, j), corner(1, i, j)],
      [corner(i, 0, j), corner(i, 1, j)],
      [corner(i, j, 0), corner(i, j, 1)],
    ]),
  );
}

export const ordered = (a: Vec3, b: Vec3): { readonly low: Vec3; readonly high: Vec3 } => ({
  low: { x: Math.min(a.x, b.x), y: Math.min(a.y, b.y), z: Math.min(a.z, b.z) },
  high: { x: Math.max(a.x, b.x), y: Math.max(a.y, b.y), z: Math.max(a.z, b.z) },
});

const add = (a: Vec3, b: Vec3): Vec3 => ({ x: a.x + b.x, y: a.y + b.y, z: a.z + b.z });
const sub = (a: Vec3, b: Vec3): Vec3 => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
const times = (a: Vec3, by: number): Vec3 => ({ x: a.x * by, y: a.y * by, z: a.z * by });
const dot = (a: Vec3, b: Vec3): number => a.x * b.x + a.y * b.y + a.z * b.z;
const size = (a: Vec3): number => Math.sqrt(dot(a, a));
const unit = (a: Vec3): Vec3 => times(a, 1 / size(a));
const upSquareTo = (axis: Vec3): Vec3 => unit({ x: -axis.z * axis.x, y: -axis.z * axis.y, z: 1 - axis.z * axis.z });
