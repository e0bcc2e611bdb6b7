import type { Dimension } from "../car/car.ts";
import { type MovingSolids, movingSolids } from "../clearance/moving-solids.ts";
import { type ClearancePair, clearancePairs } from "../clearance/pairs.ts";
import type { Corner } from "../cycle/corner.ts";
import { positionOf } from "../cycle/position.ts";
import { ROW } from "../cycle/row.ts";
import type { MotionState } from "../linkage/motion-state.ts";

/** Something that could stop the wheel: it does where its spare comes down to zero. */
export interface Limit {
  readonly id: string;
  readonly code: LimitCode;
  /** In the trade's words, e.g. `outer U-joint angle`. */
  readonly label: string;
  /** What is left, and how it is called: `of bend`, `of shaft`, … */
  readonly dimension: Dimension;
  readonly spareWord: string;
  /** `made`: a part made to stop the wheel (strap, bump stop); `hard`: anything else. */
  readonly nature: "hard" | "made";
  /** Its place in the document. */
  readonly place: string;
  /** What is left at a position, in SI; 0 at the limit, negative past it. */
  spare(look: Look): number;
  /** For a clearance: the pair itself. */
  readonly pair?: ClearancePair;
}

export type LimitCode =
  | "shock-shortest"
  | "shock-longest"
  | "inner-joint"
  | "outer-joint"
  | "slip-bottoms"
  | "slip-engagement"
  | "underbody"
  | "clearance"
  | "rod-end"
  | "strap"
  | "bump-stop-touched"
  | "bump-stop-solid"
  | "linkage";

/** One solved position, as limits look at it. */
export interface Look {
  readonly travel: number;
  readonly state: MotionState;
  readonly row: Float64Array;
  readonly solids: () => MovingSolids;
}

/** A look whose solids are made when first asked for. */
export function lookAt(corner: Corner, state: MotionState, row: Float64Array, travel: number): Look {
  let solids: MovingSolids | undefined;
  return {
    travel,
    state,
    row,
    solids: () => {
      solids ??= movingSolids(corner, positionOf(corner, state));
      return solids;
    },
  };
}

/** Every limit that this car can have, but the linkage's own range. */
export const limitsOf = (corner: Corner): readonly Limit[] => [...plainLimitsOf(corner), ...clearanceLimits(corner)];

/** Those that need no solids. */
export const plainLimitsOf = (corner: Corner): readonly Limit[] => [
  ...shockLimits(corner),
  ...shaftLimits(corner),
  ...underbodyLimits(corner),
  ...rodEndLimits(corner),
  ...madeStops(corner),
];

function shockLimits({ car }: Corner): Limit[] {
  const { shock } = car;
  if (!shock) return [];
  const common = { dimension: "length", spareWord: "of shaft", nature: "hard", place: "shock" } as const;
  return [
    {
      ...common,
      id: "shock-shortest",
      code: "shock-shortest",
      label: "shock shortest",
      place: "shock.shortest",
      spare: ({ row }) => row[ROW.shockLength]! - shock.shortest,
    },
    {
      ...common,
      id: "shock-longest",
      code: "shock-longest",
      label: "shock longest",
      place: "shock.longest",
      spare: ({ row }) => shock.longest - row[ROW.shockLength]!,
    },
  ];
}

const JOINT_NAME = { "u-joint": "U-joint", "constant-velocity": "CV joint" } as const;

function shaftLimits({ car }: Corner): Limit[] {
  const shaft = car.driveshaft;
  if (!shaft) return [];
  const limits: Limit[] = [];
  for (const side of ["inner", "outer"] as const) {
    const joint = shaft[side];
    const most = joint.angleLimit;
    if (most === undefined) continue;
    const place = side === "inner" ? ROW.innerJointAngle : ROW.outerJointAngle;
    limits.push({
      id: `${side}-joint`,
      code: `${side}-joint`,
      label: `${side} ${JOINT_NAME[joint.kind]} angle`,
      dimension: "angle",
      spareWord: "of bend",
      nature: "hard",
      place: `driveshaft.${side}.angleLimit`,
      spare: ({ row }) => most - row[place]!,
    });
  }
  const { slip } = shaft;
  if (!slip) return limits;
  const common = { dimension: "length", nature: "hard" } as const;
  limits.push({
    ...common,
    id: "slip-engagement",
    code: "slip-engagement",
    label: "slip, least engagement",
    spareWord: "of spline to spare",
    place: "driveshaft.slip.leastEngagement",
    spare: ({ row }) => row[ROW.slipEngagement]! - slip.leastEngagement,
  });
  const left = slip.pushInLeft;
  if (left === undefined) return limits;
  limits.push({
    ...common,
    id: "slip-bottoms",
    code: "slip-bottoms",
    label: "slip bottoms",
    spareWord: "to push in",
    place: "driveshaft.slip.pushInLeft",
    spare: ({ row }) => left + row[ROW.plunge]!,
  });
  return limits;
}

function underbodyLimits({ stops }: Corner): Limit[] {
  if (stops.lowest === undefined) return [];
  return [
    {
      id: "underbody",
      code: "underbody",
      label: "underbody to ground",
      dimension: "length",
      spareWord: "of air",
      nature: "hard",
      place: "underbody",
      spare: ({ row }) => row[ROW.groundClearance]!,
    },
  ];
}

function rodEndLimits({ car, pivots }: Corner): Limit[] {
  return car.rodEnds.flatMap((end, index): Limit[] => {
    const most = end.misalignmentLimit;
    if (most === undefined) return [];
    const label = pivots.find(({ id }) => id === end.pivot)?.label ?? end.pivot;
    return [
      {
        id: `rod-end:${end.pivot}`,
        code: "rod-end",
        label: `rod end, ${label}`,
        dimension: "angle",
        spareWord: "of tilt",
        nature: "hard",
        place: `rodEnds["${end.pivot}"].misalignmentLimit`,
        spare: ({ row }) => most - row[ROW.rodEnds + index]!,
      },
    ];
  });
}

function madeStops({ stops }: Corner): Limit[] {
  const limits: Limit[] = [];
  const common = { dimension: "length", nature: "made" } as const;
  if (stops.strap) {
    limits.push({
      ...common,
      id: "strap",
      code: "strap",
      label: "strap taut",
      spareWord: "of slack",
      place: "strap.length",
      spare: ({ row }) => row[ROW.strapSlack]!,
    });
  }
  if (stops.bumpStop) {
    limits.push(
      {
        ...common,
        id: "bump-stop-touched",
        code: "bump-stop-touched",
        label: "bump stop touched",
        spareWord: "of gap",
        place: "bumpStop.reach",
        spare: ({ row }) => row[ROW.bumpStopGap]!,
      },
      {
        ...common,
        id: "bump-stop-solid",
        code: "bump-stop-solid",
        label: "bump stop solid",
        spareWord: "to squeeze",
        place: "bumpStop.solid",
        spare: ({ row }) => row[ROW.bumpStopLeft]!,
      },
    );
  }
  return limits;
}

const clearanceLimits = (corner: Corner): Limit[] =>
  clearancePairs(corner).map((pair) => ({
    id: `clearance:${pair.id}`,
    code: "clearance",
    label: pair.label,
    dimension: "length",
    spareWord: "of gap",
    nature: "hard",
    place: pair.place,
    spare: (look) => pair.measure(look.solids()).gap,
    pair,
  }));
