import type { ArmId, Car, UnitSystem } from "../car/car.ts";
import type { Operation } from "../document/operation.ts";
import { INCH } from "../units/convert.ts";
import type { ArmFrame, ArmMember } from "./arm-frame.ts";
import { armFrame, armTube } from "./arm-frames.ts";
import { type ArmChange, armDiameter, carWithArm, changeOperations } from "./changed-arm.ts";
import { type ArmCheck, checkArm, weakest } from "./check-arms.ts";
import type { GussetEntry, UnderTubeEntry } from "./entry.ts";
import type { PartCheck } from "./part-check.ts";
import type { PartForces } from "./part-forces.ts";
import { placesOnArm } from "./places.ts";
import { lightestThat, type TubeSize } from "./stock-tubes.ts";

/** A change of an arm with which all its tubes hold in all cases: found by reckoning the changed frame, not guessed. */
export interface ArmProposal {
  readonly arm: ArmId;
  readonly kind: "next-size" | "gusset" | "second-tube";
  readonly change: ArmChange;
  /** The weakest of the arm's tubes with it. */
  readonly weakest: PartCheck;
  /** kg of the arm with it, and what it adds. */
  readonly mass: number;
  readonly added: number;
  /** The edits of the car document that make it. */
  readonly operations: readonly Operation[];
}

/** Less than this an arm does not bear the case. */
export const LEAST_FACTOR = 1;
/** How much larger in diameter than now a tube is looked for, m: beyond it another layout serves better (common practice). */
const MOST_LARGER = 0.5 * INCH;
/** Rounds in which one kind of tube after the other is made larger. */
const MOST_ROUNDS = 6;

/**
 * What makes a weak arm hold: the lightest stocked sizes, a plate under the mount where it is weakest, a second tube under
 * the mounts. Lightest first; none for an arm that holds, or that the builder drew himself.
 */
export function armProposals(car: Car, present: ArmCheck, forces: readonly PartForces[]): readonly ArmProposal[] {
  const worst = weakest(present.checks);
  if (!worst || holds(worst) || !present.frame.isAssumed) return [];
  const { arm } = present.frame;
  const search: Search = {
    car,
    arm,
    worst: forces.filter(({ name }) => name === worst.loadCase),
    grave: casesOf(present, forces),
  };
  const found = ([kind, change]: readonly [ArmProposal["kind"], ArmChange | null]): readonly ArmProposal[] => {
    if (!change) return [];
    const made = checkArm(armFrame(carWithArm(car, arm, change), arm), forces);
    const least = weakest(made.checks);
    if (!least || !holds(least)) return [];
    const operations = changeOperations(car, arm, change);
    return [{ arm, kind, change, weakest: least, mass: made.mass, added: made.mass - present.mass, operations }];
  };
  return (
    [
      ["next-size", findSizes(search)],
      ["gusset", findGusset(search, present.frame, worst)],
      ["second-tube", findUnder(search)],
    ] as const
  )
    .flatMap(found)
    .sort((a, b) => a.mass - b.mass);
}

interface Search {
  readonly car: Car;
  readonly arm: ArmId;
  /** The worst case, which most of what is tried fails; those that come near to what the arm bears, which the rest is tried with. */
  readonly worst: readonly PartForces[];
  readonly grave: readonly PartForces[];
}

const holds = ({ factor }: PartCheck): boolean => factor === null || factor >= LEAST_FACTOR;

/** Cases in which any of the arm's tubes is used by half. */
function casesOf({ analysis }: ArmCheck, forces: readonly PartForces[]): readonly PartForces[] {
  if (!analysis.ok) return forces;
  return forces.filter((_, index) => analysis.cases[index]!.uses.some(({ use }) => use > 0.5));
}

const reckoned = ({ car, arm }: Search, change: ArmChange, cases: readonly PartForces[]): ArmCheck =>
  checkArm(armFrame(carWithArm(car, arm, change), arm), cases);

/** Whether the tubes of a role (all where none is named) hold with a change, in the worst case and then in all grave ones. */
const doHold = (search: Search, change: ArmChange, role?: Role): boolean =>
  [search.worst, search.grave].every((cases) => {
    const { frame, checks } = reckoned(search, change, cases);
    return checks.every((check) => holds(check) || (role !== undefined && roleOf(frame, check) !== role));
  });

const ROLES = ["main", "cross", "under"] as const;
type Role = (typeof ROLES)[number];

/** Role by role, weakest first, the lightest stocked size with which that role's tubes hold; again, until all do. */
function findSizes(search: Search, from: ArmChange = {}): ArmChange | null {
  const { car, arm } = search;
  let change = from;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const now = reckoned(search, change, search.grave);
    const worst = weakest(now.checks);
    if (!worst || holds(worst)) return change;
    const role = ROLES.find((each) => each === roleOf(now.frame, worst));
    if (!role) return null;
    const present = sizeOf(car, arm, role, change);
    if (!present) return null;
    const size = lightestThat(present, present.diameter + MOST_LARGER, car.units, (wanted) =>
      doHold(search, withSize(car, arm, change, role, wanted), role),
    );
    if (!size) return null;
    change = withSize(car, arm, change, role, size);
  }
  return null;
}

const roleOf = ({ members }: ArmFrame, { label }: PartCheck): ArmMember["role"] =>
  members.find((member) => member.label === label)!.role;

function sizeOf(car: Car, arm: ArmId, role: Role, change: ArmChange): TubeSize | undefined {
  const tube = armTube(car, arm);
  switch (role) {
    case "main":
      return change.main ?? { diameter: armDiameter(car, arm), wall: tube.wall };
    case "cross":
      return change.cross ?? { diameter: tube.crossDiameter, wall: tube.crossWall };
    case "under":
      return change.under ?? tube.under;
  }
}

function withSize(car: Car, arm: ArmId, change: ArmChange, role: Role, size: TubeSize): ArmChange {
  if (role !== "under") return { ...change, [role]: size };
  const under = change.under ?? armTube(car, arm).under!;
  return { ...change, under: { ...under, ...size } };
}

/** Sizes that a builder has at hand; common practice. m. */
const PLATES: Readonly<Record<UnitSystem, readonly number[]>> = {
  "inch-pound": [3 / 16, 1 / 4].map((t) => t * INCH),
  metric: [0.005, 0.006],
};
const DEPTHS: Readonly<Record<UnitSystem, readonly number[]>> = {
  "inch-pound": [1.5, 2].map((d) => d * INCH),
  metric: [0.04, 0.05],
};
const REACHES: Readonly<Record<UnitSystem, readonly number[]>> = {
  "inch-pound": [3, 4, 6].map((r) => r * INCH),
  metric: [0.075, 0.1, 0.15],
};

/** The lightest plate under the mount where the arm is weakest; null where that is no mount, or has one. */
function findGusset(search: Search, frame: ArmFrame, worst: PartCheck): ArmChange | null {
  const { car, arm } = search;
  const mount = placesOnArm(car, arm).find(({ isPivot, label }) => !isPivot && worst.where === `at ${label}`);
  if (!mount || roleOf(frame, worst) !== "main" || armTube(car, arm).gusset) return null;
  const plates: readonly GussetEntry[] = PLATES[car.units]
    .flatMap((thickness) =>
      DEPTHS[car.units].flatMap((depth) =>
        REACHES[car.units].map((reach) => ({ at: mount.id, thickness, depth, reach })),
      ),
    )
    .sort((a, b) => volume(a) - volume(b));
  return firstThatHolds(
    search,
    plates.map((gusset) => ({ gusset })),
  );
}

const volume = ({ thickness, depth, reach }: GussetEntry): number => thickness * depth * reach;

const SECOND_TUBES: Readonly<Record<UnitSystem, readonly TubeSize[]>> = {
  "inch-pound": [
    { diameter: INCH, wall: 0.083 * INCH },
    { diameter: INCH, wall: 0.12 * INCH },
    { diameter: 1.25 * INCH, wall: 0.12 * INCH },
  ],
  metric: [
    { diameter: 0.025, wall: 0.002 },
    { diameter: 0.025, wall: 0.003 },
    { diameter: 0.032, wall: 0.003 },
  ],
};
const DROPS: Readonly<Record<UnitSystem, readonly number[]>> = {
  "inch-pound": [2.5, 3, 4].map((d) => d * INCH),
  metric: [0.06, 0.08, 0.1],
};

/** The lightest second tube, where the arm has none; where other tubes are weak too, a stout one and larger ones of those. */
function findUnder(search: Search): ArmChange | null {
  const { car, arm } = search;
  if (armTube(car, arm).under) return null;
  const tubes: readonly UnderTubeEntry[] = SECOND_TUBES[car.units].flatMap((size) =>
    DROPS[car.units].map((drop) => ({ ...size, drop })),
  );
  const changes = tubes.map((under): ArmChange => ({ under }));
  return firstThatHolds(search, changes) ?? findSizes(search, changes.at(-1));
}

const firstThatHolds = (search: Search, changes: readonly ArmChange[]): ArmChange | null =>
  changes.find((change) => doHold(search, change)) ?? null;
