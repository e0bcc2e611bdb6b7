import type { AArm, DoubleAArmLinkage } from "../car/car.ts";
import { type Pose, placePoint, rotate, rotationBetween } from "../geometry/pose.ts";
import { subtract, unit, type Vec3 } from "../geometry/vec3.ts";
import { reachDirection } from "./arm-axis.ts";
import { armLine, type DoubleAArmConstants, doubleAArmConstants, KINGPIN } from "./double-a-arm-constants.ts";
import { closure, deriveByTravel, placeByAngle, UPPER_CLOSED } from "./double-a-arm-step.ts";
import {
  type Branches,
  type DrivenPosition,
  type DrivenStretch,
  drivenRange,
  findDrivenRange,
} from "./driven-range.ts";
import type { AdjustedLinkage, Lengths, LinkageKind, Mechanism } from "./kind.ts";
import { designState, type MotionState, AT as STATE_PLACES } from "./motion-state.ts";
import { armTube, givenLength, hingePivots, linkPivots, linkTube } from "./parts.ts";
import { screwedEnd, screwOut, screwRound, turnbuckle } from "./screw.ts";

// A local copy: its numbers are then constants to the compiler, where an imported object is looked up at run time.
const AT = STATE_PLACES;

/**
 * Two A-arms and a toe link. The lower arm turns by α; the distance between the two balls then gives the upper arm's
 * angle γ, and the toe link's length the spindle's turn δ about the line through the balls: two trigonometric equations
 * P cos x + Q sin x = S, solved in closed form one after the other.
 */
export const doubleAArm: LinkageKind<DoubleAArmLinkage> = {
  kind: "double-a-arm",
  title: "double A-arm and toe link",
  arms: ({ lowerArm, upperArm }) => [
    { body: "lower-arm", ...armLine(lowerArm) },
    { body: "upper-arm", ...armLine(upperArm) },
  ],
  members: ({ lowerArm, upperArm, toeLink }) => [
    armTube(
      "lowerArm.front",
      "lower arm, front tube",
      "lower-arm",
      lowerArm.innerFront,
      lowerArm.outer,
      lowerArm.diameter,
    ),
    armTube(
      "lowerArm.rear",
      "lower arm, rear tube",
      "lower-arm",
      lowerArm.innerRear,
      lowerArm.outer,
      lowerArm.diameter,
    ),
    armTube(
      "upperArm.front",
      "upper arm, front tube",
      "upper-arm",
      upperArm.innerFront,
      upperArm.outer,
      upperArm.diameter,
    ),
    armTube(
      "upperArm.rear",
      "upper arm, rear tube",
      "upper-arm",
      upperArm.innerRear,
      upperArm.outer,
      upperArm.diameter,
    ),
    linkTube("toeLink", "toe link", toeLink),
  ],
  pivots: ({ lowerArm, upperArm, toeLink }) => [
    ...innerPivots("lower-arm", "lowerArm", "lower arm", lowerArm),
    ballPivot("lower-arm", "lowerArm", "lower arm", lowerArm),
    ...innerPivots("upper-arm", "upperArm", "upper arm", upperArm),
    ballPivot("upper-arm", "upperArm", "upper arm", upperArm),
    ...linkPivots("toeLink", "toe link", toeLink),
  ],
  adjusters: () => [
    turnbuckle("toeLink", "toe link"),
    ...(["lowerArm", "upperArm"] as const).flatMap((arm) => {
      const label = arm === "lowerArm" ? "lower arm" : "upper arm";
      return [
        screwedEnd(`${arm}.outer`, `${label}, outer end`),
        screwedEnd(`${arm}.innerFront`, `${label}, inner front end`),
        screwedEnd(`${arm}.innerRear`, `${label}, inner rear end`),
      ];
    }),
  ],
  adjust: adjustDoubleAArm,
  mechanism: doubleAArmMechanism,
};

const innerPivots = (body: "lower-arm" | "upper-arm", id: string, label: string, arm: AArm) =>
  hingePivots(
    body,
    "chassis",
    { id: `${id}.innerFront`, label: `${label}, inner front`, point: arm.innerFront },
    { id: `${id}.innerRear`, label: `${label}, inner rear`, point: arm.innerRear },
  );

const ballPivot = (body: "lower-arm" | "upper-arm", id: string, label: string, arm: AArm) => ({
  id: `${id}.outer`,
  label: `${label}, outer`,
  point: arm.outer,
  boltSide: "spindle" as const,
  shank: { body },
});

function doubleAArmMechanism(
  linkage: DoubleAArmLinkage,
  wheelCentre: Vec3,
  lengths: Lengths = {},
  like: Mechanism | undefined = undefined,
): Mechanism {
  const m = doubleAArmConstants(linkage, wheelCentre, lengths);
  const scratch = designState();
  const look = (angle: number, branches: Branches): DrivenPosition => {
    scratch[AT.firstArm + 2] = angle;
    const placed = placeByAngle(m, branches[0]!, branches[1]!, scratch);
    const margins = [closure[0]!, placed === UPPER_CLOSED ? 1 : closure[1]!];
    return { travel: scratch[AT.wheelCentre + 2]! - m.designHeight, slope: scratch[AT.velocity + 2]!, margins };
  };
  const driven = drivenRange(() => findDrivenRange(look, 2), like);
  return {
    get range() {
      return driven.own().range;
    },
    get stretches() {
      return driven.own().stretches;
    },
    solve: (travel, state) => {
      const stretch = driven.stretchAt(travel);
      return stretch ? solveDoubleAArm(m, stretch, travel, state) : -1;
    },
  };
}

/** Heights agree to this, m: a few units in the last place of a wheel centre's coordinates. */
const HEIGHT_TOLERANCE = 2e-15;
const MOST_ITERATIONS = 60;

function solveDoubleAArm(m: DoubleAArmConstants, stretch: DrivenStretch, travel: number, s: MotionState): number {
  const target = m.designHeight + travel;
  const ahead = travel - s[AT.travel]!;
  // Driving angles that give too low and too high a wheel.
  let low = stretch.lowAngle;
  let high = stretch.highAngle;
  const upper = stretch.branches[0]!;
  const toe = stretch.branches[1]!;
  let alpha = s[AT.firstArm + 2]! + ahead * (s[AT.firstArm + 3]! + 0.5 * ahead * s[AT.firstArm + 4]!);
  if (!((alpha - low) * (alpha - high) <= 0)) alpha = 0.5 * (low + high);
  let iteration = 0;
  for (;;) {
    iteration += 1;
    s[AT.firstArm + 2] = alpha;
    placeByAngle(m, upper, toe, s);
    const miss = s[AT.wheelCentre + 2]! - target;
    if (miss <= HEIGHT_TOLERANCE && miss >= -HEIGHT_TOLERANCE) break;
    if (miss > 0) high = alpha;
    else low = alpha;
    const z1 = s[AT.velocity + 2]!;
    let next = alpha - (2 * miss * z1) / (2 * z1 * z1 - miss * s[AT.acceleration + 2]!);
    if (!((next - low) * (next - high) < 0)) next = 0.5 * (low + high);
    if (next === alpha || iteration >= MOST_ITERATIONS) break;
    alpha = next;
  }
  deriveByTravel(s, travel);
  return iteration;
}

function adjustDoubleAArm(linkage: DoubleAArmLinkage, id: string, change: number): AdjustedLinkage<DoubleAArmLinkage> {
  const { lowerArm, upperArm, toeLink } = linkage;
  const asBuilt = {
    toeLink: givenLength({}, "toeLink", toeLink.inner, toeLink.outer),
    [KINGPIN]: givenLength({}, KINGPIN, lowerArm.outer, upperArm.outer),
  };
  if (id === "toeLink") return { linkage, moved: {}, lengths: { ...asBuilt, toeLink: asBuilt.toeLink + change } };
  const [name, end] = id.split(".") as ["lowerArm" | "upperArm", "outer" | "innerFront" | "innerRear"];
  const arm = linkage[name];
  const body = name === "lowerArm" ? "lower-arm" : "upper-arm";
  let outer: Vec3;
  const moved: Partial<Record<"lower-arm" | "upper-arm" | "spindle", Pose>> = {};
  if (end === "outer") {
    outer = screwOut(arm.outer, armLine(arm), change);
  } else {
    // The chassis stays: the arm is turned back by what its end is screwed out. The shank lies in the arm, square to the
    // hinge line, and points away from the ball.
    const kept = end === "innerFront" ? arm.innerRear : arm.innerFront;
    const shank = reachDirection(arm.outer, armLine(arm).axis, arm[end]);
    const back = screwRound(kept, arm[end], shank, -change);
    outer = placePoint(back, arm.outer);
    moved[body] = back;
  }
  const lower = name === "lowerArm" ? outer : lowerArm.outer;
  const upper = name === "upperArm" ? outer : upperArm.outer;
  // The spindle is laid with its lower ball on the lower arm's, its kingpin toward the upper arm's ball.
  const rotation = rotationBetween(unit(subtract(upperArm.outer, lowerArm.outer)), unit(subtract(upper, lower)));
  const spindle: Pose = { rotation, translation: subtract(lower, rotate(rotation, lowerArm.outer)) };
  return {
    linkage: {
      ...linkage,
      lowerArm: { ...lowerArm, outer: lower },
      upperArm: { ...upperArm, outer: upper },
      toeLink: { ...toeLink, outer: placePoint(spindle, toeLink.outer) },
    },
    moved: { ...moved, spindle },
    lengths: asBuilt,
  };
}
