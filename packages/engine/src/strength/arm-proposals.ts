import type { ArmId, Car, UnitSystem } from "../car/car.ts";
import type { Operation } from "../document/operation.ts";
import { distance } from "../geometry/vec3.ts";
import { INCH } from "../units/convert.ts";
import type { ArmFrame, ArmMember } from "./arm-frame.ts";
import { armFrame, armTube } from "./arm-frames.ts";
import { type ArmChange, armDiameter, carWithArm, changeOperations } from "./changed-arm.ts";
import { type ArmCheck, checkArm, weakest } from "./check-arms.ts";
import type { GussetEntry, UnderTubeEntry } from "./entry.ts";
import type { PartCheck } from "./part-check.ts";
import type { PartForces } from "./part-forces.ts";
import { placesOnArm } from "./places.ts";
import { lightestThat, stoutest, type TubeSize } from "./stock-tubes.ts";

/** A change of an arm, and what its tubes then bear in all cases: by reckoning the changed frame, not guessed. */
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
/**
 * How much larger in diameter than now a tube is looked for, m: the second where the first is not enough; beyond it another
 * layout serves better (common practice).
 */
const MOST_LARGER = [0.5 * INCH, 0.75 * INCH] as const;
/** Rounds in which one kind of tube after the other is made larger. */
const MOST_ROUNDS = 6;

/** What was tried on a weak arm, lightest first: what makes it hold, and of each way that does not, how far it comes. */
export interface ArmWays {
  readonly proposals: readonly ArmProposal[];
  readonly tried: readonly ArmProposal[];
}

/**
 * What makes a weak arm hold: the lightest stocked sizes, a plate under the mount where it is weakest, a second tube under
 * the mounts; the last two with larger tubes where they alone are not enough. None for an arm that holds, or that the
 * builder drew himself.
 */
export function armWays(car: Car, present: ArmCheck, forces: readonly PartForces[]): ArmWays {
  const worst = weakest(present.checks);
  if (!worst || holds(worst) || !present.frame.isAssumed) return { proposals: [], tried: [] };
  const { arm } = present.frame;
  const search: Search = {
    car,
    arm,
    worst: forces.filter(({ name }) => name === worst.loadCase),
    grave: casesOf(present, forces),
  };
  const ways = (
    [
      ["next-size", MOST_LARGER.map((larger) => () => findSizes(search, larger))],
      ["gusset", [() => findGusset(search, present.frame, worst)]],
      ["second-tube", [() => findUnder(search)]],
    ] as const
  ).flatMap(([kind, finders]): readonly ArmProposal[] => {
    let made: ArmProposal | null = null;
    for (const find of finders) {
      const change = find();
      made = change && proposalOf(car, present, forces, kind, change);
      if (!made || holds(made.weakest)) break;
    }
    return made ? [made] : [];
  });
  const lightestFirst = [...ways].sort((a, b) => a.mass - b.mass);
  return {
    proposals: lightestFirst.filter(({ weakest: least }) => holds(least)),
    tried: lightestFirst.filter(({ weakest: least }) => !holds(least)),
  };
}

function proposalOf(
  car: Car,
  present: ArmCheck,
  forces: readonly PartForces[],
  kind: ArmProposal["kind"],
  change: ArmChange,
): ArmProposal | null {
  const { arm } = present.frame;
  const made = checkArm(armFrame(carWithArm(car, arm, change), arm), forces);
  const least = weakest(made.checks);
  if (!least) return null;
  const operations = changeOperations(car, arm, change);
  return { arm, kind, change, weakest: least, mass: made.mass, added: made.mass - present.mass, operations };
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

/**
 * Role by role, weakest first, the lightest stocked size with which that role's tubes hold; again, until all do. Where a
 * role has none, the stoutest one that was tried: it is not enough.
 */
function findSizes(search: Search, larger: number, from: ArmChange = {}): ArmChange | null {
  const { car, arm } = search;
  let change = from;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const now = reckoned(search, change, search.grave);
    const worst = weakest(now.checks);
    if (!worst || holds(worst)) return change;
    const role = ROLES.find((each) => each === roleOf(now.frame, worst));
    const present = role && sizeOf(car, arm, role, change);
    if (!role || !present) return change;
    const most = present.diameter + larger;
    const size = lightestThat(present, most, car.units, (wanted) =>
      doHold(search, withSize(car, arm, change, role, wanted), role),
    );
    if (!size) return withSize(car, arm, change, role, stoutest(present, most, car.units));
    change = withSize(car, arm, change, role, size);
  }
  return change;
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
  "inch-pound": [1 / 8, 3 / 16, 1 / 4].map((t) => t * INCH),
  metric: [0.003, 0.005, 0.006],
};
const DEPTHS: Readonly<Record<UnitSystem, readonly number[]>> = {
  "inch-pound": [0.5, 1, 1.5, 2].map((d) => d * INCH),
  metric: [0.012, 0.025, 0.04, 0.05],
};
const REACHES: Readonly<Record<UnitSystem, readonly number[]>> = {
  "inch-pound": [3, 4, 6].map((r) => r * INCH),
  metric: [0.075, 0.1, 0.15],
};

/**
 * The lightest plate under the shock's or the stop's mount where the arm is weakest, or nearest to there; where no plate alone is enough,
 * the one that helps most, with larger tubes. Null where there is no mount on its tubes, or where a plate is already.
 */
function findGusset(search: Search, frame: ArmFrame, worst: PartCheck): ArmChange | null {
  const { car, arm } = search;
  const { at } = worst;
  if (!at || armTube(car, arm).gusset) return null;
  const onTubes = new Set(frame.members.filter(({ role }) => role === "main").flatMap(({ from, to }) => [from, to]));
  const [mount] = placesOnArm(car, arm)
    .flatMap((place) => {
      const node = frame.attached.find((each) => each.place === place.id)?.node;
      const point = frame.nodes.find(({ id }) => id === node)?.point;
      return !place.isPivot && !place.id.startsWith("strap") && node && point && onTubes.has(node)
        ? [{ id: place.id, off: distance(point, at) }]
        : [];
    })
    .sort((a, b) => a.off - b.off);
  if (!mount) return null;
  const room = roomUnder(car, arm);
  const plates: readonly GussetEntry[] = PLATES[car.units]
    .flatMap((thickness) =>
      DEPTHS[car.units]
        .filter((depth) => depth <= room)
        .flatMap((depth) => REACHES[car.units].map((reach) => ({ at: mount.id, thickness, depth, reach }))),
    )
    .sort((a, b) => volume(a) - volume(b));
  return firstOrWithSizes(
    search,
    plates.map((gusset) => ({ gusset })),
  );
}

/** Between an arm's tube and its second one, m. */
function roomUnder(car: Car, arm: ArmId): number {
  const { under } = armTube(car, arm);
  return under ? under.drop - (under.diameter + armDiameter(car, arm)) / 2 : Number.POSITIVE_INFINITY;
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

/** The lightest second tube, where the arm has none; where other tubes are weak too, the best one and larger ones of those. */
function findUnder(search: Search): ArmChange | null {
  const { car, arm } = search;
  if (armTube(car, arm).under) return null;
  const tubes: readonly UnderTubeEntry[] = SECOND_TUBES[car.units].flatMap((size) =>
    DROPS[car.units].map((drop) => ({ ...size, drop })),
  );
  const changes = tubes.map((under): ArmChange => ({ under }));
  return firstOrWithSizes(search, changes);
}

/** The first change that holds alone; else the one that comes farthest in the worst case, with larger tubes. */
function firstOrWithSizes(search: Search, changes: readonly ArmChange[]): ArmChange | null {
  const alone = changes.find((change) => doHold(search, change));
  if (alone) return alone;
  const best = changes
    .map((change) => ({ change, factor: weakest(reckoned(search, change, search.worst).checks)?.factor ?? 0 }))
    .reduce<{ readonly change: ArmChange; readonly factor: number } | null>(
      (most, each) => (most && most.factor >= each.factor ? most : each),
      null,
    );
  return best && findSizes(search, MOST_LARGER[0], best.change);
}
