import type { BodyId } from "../car/car.ts";
import { type Corner, solveAt } from "../cycle/corner.ts";
import { positionOf } from "../cycle/position.ts";
import { solveLinear } from "../geometry/solve-linear.ts";
import { scale, type Vec3 } from "../geometry/vec3.ts";
import type { Balance } from "./corner-forces.ts";
import { equilibriumResidual } from "./equilibrium-residual.ts";
import { type ForceMoment, forceAt, NOTHING, sum, times } from "./force-moment.ts";
import { type Joint, jointsOf, pieceOf, piecesOf } from "./joints.ts";
import { readForces } from "./read-forces.ts";
import { spindleAction } from "./spindle-action.ts";
import { type StrutName, type StrutPlace, strutPlaceOf } from "./struts.ts";
import type { WheelLoad } from "./wheel-load.ts";

/** A corner held still: what loads it, and which part holds it up. */
export interface HeldCorner {
  /** m, bump positive. */
  readonly travel: number;
  readonly load: WheelLoad;
  /** The part whose force is whatever the balance needs. */
  readonly carrier: StrutName;
  /** Forces of the others, where they act too, N: shock and bump stop in compression, strap in tension. */
  readonly known?: Partial<Record<StrutName, number>>;
}

/** One unknown of the balance: what a unit of it does to the bodies it joins. */
export interface Unknown {
  readonly inner: BodyId;
  readonly outer: BodyId;
  /** On the outer body, about the reference point; the inner one feels the opposite. */
  readonly onOuter: ForceMoment;
}

/**
 * Free-body equilibrium of spindle and arms: six equations a body, about the wheel centre, in the unknown joint forces and
 * the carrier's. Two rod ends on one hinge line count as four forces square to it and one along it, since how that one is
 * shared between them depends on fits and flex. Bodies are rigid and weightless, joints without friction; links carry only
 * along themselves, so a shock or strap must ride on an arm or the spindle.
 */
export function balance(corner: Corner, held: HeldCorner): Balance {
  const { travel, load, carrier, known = {} } = held;
  const solved = solveAt(corner, travel);
  if (!solved) return { ok: false, reason: "out-of-range", travel };
  const position = positionOf(corner, solved.state);
  const about = position.wheelCentre;
  const action = spindleAction(corner, position, load);
  const joints = jointsOf(corner, position);
  const carrierPlace = strutPlaceOf(corner.car, position, carrier);
  if (!carrierPlace) return { ok: false, reason: "part-missing", part: carrier };

  const given: { readonly place: StrutPlace; readonly magnitude: number }[] = [];
  const onPiece = new Map<BodyId, ForceMoment>([[pieceOf(corner, "spindle"), action.onSpindle]]);
  const put = (body: BodyId, what: ForceMoment): void => {
    const piece = pieceOf(corner, body);
    onPiece.set(piece, sum(onPiece.get(piece) ?? NOTHING, what));
  };
  for (const name of Object.keys(known) as StrutName[]) {
    const magnitude = known[name];
    if (name === carrier || magnitude === undefined || magnitude === 0) continue;
    const place = strutPlaceOf(corner.car, position, name);
    if (!place) return { ok: false, reason: "part-missing", part: name };
    const onLower = times(strutUnit(place, about), magnitude);
    put(place.lower.on, onLower);
    put(place.upper.on, times(onLower, -1));
    given.push({ place, magnitude });
  }

  const carrierUnknown: Unknown = {
    inner: carrierPlace.upper.on,
    outer: carrierPlace.lower.on,
    onOuter: strutUnit(carrierPlace, about),
  };
  const x = solveBalance(corner, joints, about, carrierUnknown, onPiece);
  if (!x) return { ok: false, reason: "singular", travel };
  const forces = readForces({ corner, position, action, joints, carrierPlace, given, x });
  return { ok: true, forces: { ...forces, residual: equilibriumResidual(corner, position, forces) } };
}

/** The unknowns of the joints in their order and the carrier's last; null where nothing can hold what acts. */
export function solveBalance(
  corner: Corner,
  joints: readonly Joint[],
  about: Vec3,
  carrier: Unknown,
  onPiece: ReadonlyMap<BodyId, ForceMoment>,
): readonly number[] | null {
  const unknowns = [...joints.flatMap((joint) => unknownsOf(joint, about)), carrier];
  const rows: number[][] = [];
  const right: number[] = [];
  for (const piece of piecesOf(corner)) {
    const columns = unknowns.map(({ inner, outer, onOuter }) => {
      const sign = (pieceOf(corner, outer) === piece ? 1 : 0) - (pieceOf(corner, inner) === piece ? 1 : 0);
      return { sign, onOuter };
    });
    const outside = onPiece.get(piece) ?? NOTHING;
    for (const part of PARTS) {
      rows.push(columns.map(({ sign, onOuter }) => sign * part(onOuter)));
      right.push(-part(outside));
    }
  }
  const x = solveLinear(rows, right);
  return x?.every((value) => Number.isFinite(value)) ? x : null;
}

const PARTS: readonly ((f: ForceMoment) => number)[] = [
  ({ force }) => force.x,
  ({ force }) => force.y,
  ({ force }) => force.z,
  ({ moment }) => moment.x,
  ({ moment }) => moment.y,
  ({ moment }) => moment.z,
];

/** One newton of a strut on its lower body: a shock or stop pushes, a strap pulls. */
const strutUnit = (place: StrutPlace, about: Vec3): ForceMoment =>
  forceAt(scale(place.push, place.name === "strap" ? -1 : 1), place.lower.point, about);

const AXES: readonly Vec3[] = [
  { x: 1, y: 0, z: 0 },
  { x: 0, y: 1, z: 0 },
  { x: 0, y: 0, z: 1 },
];

/** In the order in which `readForces` takes them back. */
function unknownsOf(joint: Joint, about: Vec3): readonly Unknown[] {
  const { inner, outer } = joint;
  const one = (force: Vec3, point: Vec3): Unknown => ({ inner, outer, onOuter: forceAt(force, point, about) });
  switch (joint.kind) {
    case "hinge":
      return [
        ...joint.points.flatMap((point) => joint.square.map((direction) => one(direction, point))),
        one(joint.axis, joint.points[0]),
      ];
    case "ball":
      return AXES.map((axis) => one(axis, joint.point));
    case "link":
      return [one(joint.pull, joint.points[1])];
  }
}
