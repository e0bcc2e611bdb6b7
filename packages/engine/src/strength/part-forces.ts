import type { ArmId, BodyId, Car } from "../car/car.ts";
import { type Corner, solveAt } from "../cycle/corner.ts";
import { type Position, poseOf, positionOf } from "../cycle/position.ts";
import { placeDirection, rotate, transpose } from "../geometry/pose.ts";
import { add, addScaled, cross, dot, length, scale, squareTo, subtract, unit, type Vec3 } from "../geometry/vec3.ts";
import type { Pivot } from "../linkage/kind.ts";
import type { CaseForces } from "../loads/case-forces.ts";
import type { CornerForces, JointForce } from "../loads/corner-forces.ts";
import type { ForceMoment } from "../loads/force-moment.ts";
import { pieceOf } from "../loads/joints.ts";
import type { StrutName } from "../loads/struts.ts";

/** A force (N) and moment (N·m) on an arm, in the axes of its design position. */
export interface PlaceForce {
  /** A pivot or mount; `hub` for what comes in from the wheel on a trailing arm. */
  readonly place: string;
  /** Where it acts in the design position, where that is not the place itself. */
  readonly point?: Vec3;
  readonly force: Vec3;
  readonly moment?: Vec3;
}

export type ArmForces = readonly PlaceForce[];

/** All forces on an arm, balanced, and what statics leaves open of them. */
export interface ArmLoad {
  /** Of two rod ends on one hinge line each has half of the force along it. */
  readonly forces: ArmForces;
  readonly undecided: readonly UndecidedForce[];
}

/** The force along a hinge line, which may be all on the one rod end or all on the other. */
export interface UndecidedForce {
  readonly places: readonly [string, string];
  /** Half of it, on the arm, in the axes of its design position, N. */
  readonly half: Vec3;
}

/** What one rod end carries, N: the most that statics lets it be. */
export interface RodEndForce {
  /** Square to its bolt, and along it. */
  readonly across: number;
  readonly along: number;
  /** Along its shank, and square to it: the latter bends the shank. */
  readonly pull: number;
  readonly side: number;
}

/** What the parts carry in one load case: all that strength has to know of it. */
export interface PartForces {
  readonly name: string;
  /** m */
  readonly travel: number;
  readonly arms: Partial<Record<ArmId, ArmLoad>>;
  /** Tension of each link, N, by member id. */
  readonly links: Readonly<Record<string, number>>;
  readonly rodEnds: Readonly<Record<string, RodEndForce>>;
  /** Size of the force at each mount, N. */
  readonly mounts: Readonly<Record<string, number>>;
  /** In the half shaft, N·m. */
  readonly shaftTorque: number;
  /** Bending moment of the stub at `toBearing` from the hub face, N·m. */
  readonly stubBending: number;
}

/** Null where the case has no balance, or asks a stop to pull: it cannot be. `toBearing`: see StubEntry. */
export function partForces(corner: Corner, { loadCase, held, balance }: CaseForces, toBearing = 0): PartForces | null {
  if (!balance.ok || balance.forces.struts.some(({ canBe }) => !canBe)) return null;
  const solved = solveAt(corner, held.travel);
  if (!solved) return null;
  const position = positionOf(corner, solved.state);
  const { forces } = balance;
  return {
    name: loadCase.name,
    travel: held.travel,
    arms: Object.fromEntries(
      corner.arms.map(({ body }) => [
        body,
        armLoad(corner, position, { ...forces, onSpindle: forces.action.onSpindle }, body),
      ]),
    ),
    links: Object.fromEntries(forces.links.map(({ member, tension }) => [member, tension])),
    rodEnds: rodEndForces(corner, position, forces),
    mounts: mountForces(forces),
    shaftTorque: Math.abs(forces.action.shaft?.inShaft ?? 0),
    stubBending: stubBending(corner.car, position, forces, toBearing),
  };
}

const MOUNTS: Readonly<Record<StrutName, { readonly lower: string; readonly upper: string }>> = {
  shock: { lower: "shock.lower", upper: "shock.upper" },
  strap: { lower: "strap.lower", upper: "strap.upper" },
  "bump-stop": { lower: "bumpStop.strikes", upper: "bumpStop.base" },
};

/** What joints, struts and wheel put on an arm, in the axes of its design position. */
export function armLoad(
  corner: Corner,
  position: Position,
  forces: Pick<CornerForces, "joints" | "hinges" | "struts"> & { readonly onSpindle: ForceMoment },
  arm: ArmId,
): ArmLoad {
  const back = transpose(poseOf(position, arm).rotation);
  const own = (force: Vec3): Vec3 => rotate(back, force);
  const isArm = (body: BodyId): boolean => pieceOf(corner, body) === arm;
  const found: PlaceForce[] = [];
  for (const joint of forces.joints) {
    const pivot = pivotOf(corner, joint);
    if (joint.on !== "link" && isArm(joint.on)) found.push({ place: joint.pivot, force: own(joint.force) });
    else if (pivot.shank.body === arm) found.push({ place: joint.pivot, force: own(scale(joint.force, -1)) });
  }
  for (const { name, onLower, lower, upper } of forces.struts) {
    if (isArm(lower.on))
      found.push({ place: MOUNTS[name].lower, ...designPoint(corner, name, "lower"), force: own(onLower) });
    if (isArm(upper.on)) {
      found.push({ place: MOUNTS[name].upper, ...designPoint(corner, name, "upper"), force: own(scale(onLower, -1)) });
    }
  }
  if (isArm("spindle")) {
    const { force, moment } = forces.onSpindle;
    found.push({ place: "hub", point: corner.wheelCentre, force: own(force), moment: own(moment) });
  }
  return { forces: found, undecided: undecidedOf(corner, forces, arm, own) };
}

function undecidedOf(
  corner: Corner,
  { hinges, joints }: Pick<CornerForces, "hinges" | "joints">,
  arm: ArmId,
  own: (force: Vec3) => Vec3,
): readonly UndecidedForce[] {
  return hinges
    .filter(({ arm: of, alongAxis }) => of === arm && alongAxis !== 0)
    .flatMap(({ at, axis, alongAxis }): UndecidedForce[] => {
      const [first, second] = corner.pivots.filter(
        ({ id, shank, boltSide }) =>
          shank.body === arm &&
          boltSide === at &&
          joints.some(({ pivot, undecided }) => pivot === id && undecided !== 0),
      );
      // Of the outer hinge it is the spindle that the force is given on.
      const half = scale(own(axis), (at === "chassis" ? alongAxis : -alongAxis) / 2);
      return first && second ? [{ places: [first.id, second.id], half }] : [];
    });
}

const pivotOf = (corner: Corner, { pivot }: JointForce): Pivot => corner.pivots.find(({ id }) => id === pivot)!;

/** A mount on the spindle of a trailing arm is no place of the arm's frame: its point says where it acts. */
function designPoint({ car }: Corner, name: StrutName, end: "lower" | "upper"): { readonly point?: Vec3 } {
  const mount = name === "bump-stop" ? car.bumpStop?.[end === "lower" ? "strikes" : "base"] : car[name]?.[end];
  return mount ? { point: mount.point } : {};
}

function rodEndForces(corner: Corner, position: Position, forces: CornerForces): Readonly<Record<string, RodEndForce>> {
  return Object.fromEntries(
    forces.joints.map((joint) => {
      const pivot = pivotOf(corner, joint);
      const rodEnd = corner.car.rodEnds.find((each) => each.pivot === joint.pivot);
      const size = length(joint.worst);
      const bolt = rodEnd && placeDirection(poseOf(position, rodEnd.boltOn), rodEnd.boltAxis);
      const along = bolt ? Math.abs(dot(joint.worst, bolt)) : 0;
      const shank = shankDirection(corner, position, pivot);
      const pull = shank ? dot(joint.worst, shank) : size;
      return [
        joint.pivot,
        {
          across: Math.sqrt(Math.max(0, size ** 2 - along ** 2)),
          along,
          pull: Math.abs(pull),
          side: shank ? length(addScaled(joint.worst, shank, -pull)) : 0,
        },
      ];
    }),
  );
}

/** A link's shank runs along it; an arm's along the tube that ends there, square to the hinge line. Unit; null where unknown. */
function shankDirection(corner: Corner, position: Position, pivot: Pivot): Vec3 | null {
  const { shank } = pivot;
  if (shank.body === "link") return null;
  const arm = shank.body;
  const tube = corner.members.find(
    ({ body, from, to }) => body === arm && [from, to].some(({ point }) => length(subtract(point, pivot.point)) < 1e-9),
  );
  if (!tube) return null;
  const along = subtract(tube.to.point, tube.from.point);
  const square = shank.hinge ? squareTo(along, unit(shank.hinge)) : along;
  return length(square) > 1e-6 ? placeDirection(poseOf(position, arm), unit(square)) : null;
}

function mountForces(forces: CornerForces): Readonly<Record<string, number>> {
  return Object.fromEntries(
    forces.struts.flatMap(({ name, magnitude }) => [
      [MOUNTS[name].lower, Math.abs(magnitude)],
      [MOUNTS[name].upper, Math.abs(magnitude)],
    ]),
  );
}

/** All that hub and bearings hand on, seen at the outer bearing; the part about the spin axis turns and does not bend. */
function stubBending(car: Car, position: Position, { action }: CornerForces, toBearing: number): number {
  const { force, moment } = action.onSpindle;
  const out = scale(position.spinAxis, car.wheel.offset - toBearing);
  const m = add(moment, cross(scale(out, -1), force));
  return length(squareTo(m, position.spinAxis));
}
