import type { TrailingArmLinkage } from "../car/car.ts";
import { placePoint } from "../geometry/pose.ts";
import { cross, dot, squareTo, subtract, type Vec3 } from "../geometry/vec3.ts";
import { liftingAxis, reachDirection } from "./arm-axis.ts";
import type { AdjustedLinkage, LinkageKind, Mechanism } from "./kind.ts";
import { AT, type MotionState } from "./motion-state.ts";
import { armTube, hingePivots } from "./parts.ts";
import { screwedEnd, screwRound } from "./screw.ts";

/**
 * Trailing arm: arm and spindle are one piece that turns by θ about the line through its two pivots, square to the car or
 * raked. The wheel's height is k + c·cos θ + s·sin θ, so that θ follows from the travel in closed form.
 */
export const trailingArm: LinkageKind<TrailingArmLinkage> = {
  kind: "trailing-arm",
  title: "trailing arm",
  arms: ({ trailingArm: arm }) => [{ body: "trailing-arm", ...armLine(arm) }],
  members: ({ trailingArm: arm }) => [
    armTube("trailingArm.inboard", "arm, inboard tube", "trailing-arm", arm.inboardPivot, arm.hub, arm.diameter),
    armTube("trailingArm.outboard", "arm, outboard tube", "trailing-arm", arm.outboardPivot, arm.hub, arm.diameter),
  ],
  pivots: ({ trailingArm: arm }) =>
    hingePivots(
      "trailing-arm",
      "chassis",
      { id: "trailingArm.inboardPivot", label: "arm, inboard pivot", point: arm.inboardPivot },
      { id: "trailingArm.outboardPivot", label: "arm, outboard pivot", point: arm.outboardPivot },
    ),
  adjusters: () => [
    screwedEnd("trailingArm.inboardPivot", "arm, inboard end"),
    screwedEnd("trailingArm.outboardPivot", "arm, outboard end"),
  ],
  adjust: adjustTrailingArm,
  mechanism: ({ trailingArm: arm }, wheelCentre) => trailingArmMechanism(arm, wheelCentre),
};

type Arm = TrailingArmLinkage["trailingArm"];

const armLine = (arm: Arm) => liftingAxis(arm.inboardPivot, arm.outboardPivot, arm.hub);

function trailingArmMechanism(arm: Arm, wheelCentre: Vec3): Mechanism {
  const { point: c, axis: a } = armLine(arm);
  const w = subtract(wheelCentre, c);
  const square = squareTo(w, a);
  const quarter = cross(a, square);
  // Height over c less its part along the axis: P cos θ + Q sin θ.
  const P = square.z;
  const Q = quarter.z;
  const N = P * P + Q * Q;
  const reach = Math.sqrt(N);
  const side = Q < 0 ? -1 : 1;
  const low = -reach - P;
  const high = reach - P;
  const along = { x: dot(w, a) * a.x, y: dot(w, a) * a.y, z: dot(w, a) * a.z };

  function solve(travel: number, s: MotionState): number {
    if (travel < low || travel > high) return -1;
    const S = P + travel;
    const root = side * Math.sqrt(Math.max(N - S * S, 1e-24));
    const ct = (P * S + Q * root) / N;
    const st = (Q * S - P * root) / N;
    // z' = −P sin θ + Q cos θ = root; z″ = −S.
    const rate = 1 / root;
    const acceleration = S * rate * rate * rate;
    const t = 1 - ct;
    s[AT.travel] = travel;
    s[AT.rotation] = ct + t * a.x * a.x;
    s[AT.rotation + 1] = t * a.x * a.y - st * a.z;
    s[AT.rotation + 2] = t * a.x * a.z + st * a.y;
    s[AT.rotation + 3] = t * a.x * a.y + st * a.z;
    s[AT.rotation + 4] = ct + t * a.y * a.y;
    s[AT.rotation + 5] = t * a.y * a.z - st * a.x;
    s[AT.rotation + 6] = t * a.x * a.z - st * a.y;
    s[AT.rotation + 7] = t * a.y * a.z + st * a.x;
    s[AT.rotation + 8] = ct + t * a.z * a.z;
    const ux = ct * square.x + st * quarter.x;
    const uy = ct * square.y + st * quarter.y;
    const uz = ct * square.z + st * quarter.z;
    const vx = ct * quarter.x - st * square.x;
    const vy = ct * quarter.y - st * square.y;
    const vz = ct * quarter.z - st * square.z;
    s[AT.wheelCentre] = c.x + along.x + ux;
    s[AT.wheelCentre + 1] = c.y + along.y + uy;
    s[AT.wheelCentre + 2] = c.z + along.z + uz;
    s[AT.spin] = rate * a.x;
    s[AT.spin + 1] = rate * a.y;
    s[AT.spin + 2] = rate * a.z;
    s[AT.velocity] = rate * vx;
    s[AT.velocity + 1] = rate * vy;
    s[AT.velocity + 2] = rate * vz;
    s[AT.spinRate] = acceleration * a.x;
    s[AT.spinRate + 1] = acceleration * a.y;
    s[AT.spinRate + 2] = acceleration * a.z;
    const rate2 = rate * rate;
    s[AT.acceleration] = acceleration * vx - rate2 * ux;
    s[AT.acceleration + 1] = acceleration * vy - rate2 * uy;
    s[AT.acceleration + 2] = acceleration * vz - rate2 * uz;
    s[AT.firstArm] = ct;
    s[AT.firstArm + 1] = st;
    s[AT.firstArm + 2] = Math.atan2(st, ct);
    s[AT.firstArm + 3] = rate;
    s[AT.firstArm + 4] = acceleration;
    return 1;
  }

  return { range: { droop: { travel: low, toggles: [] }, bump: { travel: high, toggles: [] } }, solve };
}

function adjustTrailingArm(
  linkage: TrailingArmLinkage,
  id: string,
  change: number,
): AdjustedLinkage<TrailingArmLinkage> {
  const arm = linkage.trailingArm;
  const end = id.replace("trailingArm.", "") as "inboardPivot" | "outboardPivot";
  const kept = end === "inboardPivot" ? arm.outboardPivot : arm.inboardPivot;
  // The shank points from the hub to the pivot line, square to it.
  const shank = reachDirection(arm.hub, armLine(arm).axis, arm[end]);
  const back = screwRound(kept, arm[end], shank, -change);
  const trailingArm = { ...arm, hub: placePoint(back, arm.hub) };
  return { linkage: { ...linkage, trailingArm }, moved: { "trailing-arm": back, spindle: back }, lengths: {} };
}
