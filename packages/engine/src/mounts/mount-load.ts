import type { Car } from "../car/car.ts";
import { bandOf } from "../springs/use-band.ts";
import { shockSpringOf, wheelSpringAt } from "../springs/wheel-spring.ts";
import type { Judged } from "./candidate.ts";

/** What the upper mount holds along the shock, N: springs and gas only, not the damper, not a bump stop on mounts of its own. */
export interface MountLoad {
  readonly atRide: number;
  readonly atBump: number;
  /** Where the rise from ride height comes from: the car's own springs on this shock, or a rate that gives a ride frequency. */
  readonly from: "springs" | "ride-frequency";
  /** Hz, the middle of what is usual for the car's use; only with `ride-frequency`. */
  readonly frequency?: number;
}

const GRAVITY = 9.80665;
/** Two shocks are the same where their lengths agree to this, m. */
const SAME = 0.001;

/**
 * Null where the car gives no weights. At ride height by virtual work, m·g/MR with m the sprung mass of the corner; with springs
 * on the car for this very shock, at both heights what they give. Else the rise by a constant rate k = m·(2πf)²/MR² (the part
 * of the changing motion ratio left out), f in the middle of the band of the use: common practice.
 */
export function mountLoadOf({ chassis, shock, targets }: Car, judged: Judged): MountLoad | null {
  const { atRide, atBump, motionRatio } = judged;
  const spring = shockSpringOf(shock);
  if (spring && shock && isSame(shock.shortest, judged.shock.shortest) && isSame(shock.longest, judged.shock.longest)) {
    const at = (shockLength: number): number =>
      wheelSpringAt(
        spring,
        { travel: 0, shockLength, motionRatio, motionRatioSlope: 0 },
        { pace: "fast", restedAt: atRide },
      ).shockForce;
    return { atRide: at(atRide), atBump: at(atBump), from: "springs" };
  }
  const { cornerMass, unsprungMass } = chassis;
  if (cornerMass === undefined || unsprungMass === undefined || !(cornerMass > unsprungMass)) return null;
  const mass = cornerMass - unsprungMass;
  const band = bandOf(targets.use);
  const frequency = 0.5 * (band.from + band.to);
  const resting = (mass * GRAVITY) / motionRatio;
  const rate = (mass * (2 * Math.PI * frequency) ** 2) / motionRatio ** 2;
  return { atRide: resting, atBump: resting + rate * (atRide - atBump), from: "ride-frequency", frequency };
}

const isSame = (a: number, b: number): boolean => Math.abs(a - b) < SAME;
