import type { LinkageKindName } from "../../car/car.ts";
import type { LinkageDocument } from "../schema.ts";
import type { Typist } from "./typed.ts";

// Invented layouts for one wheel (33 in tyre, hub at y = 35 1/2) and one gearbox. Lengths in inches.

/** Near-parallel lower arm and upper link, so that the wheel keeps nearly upright. */
const hArm = ({ at }: Typist): LinkageDocument => ({
  kind: "h-arm",
  lowerArm: {
    innerFront: at(8, 12, 12.5),
    innerRear: at(-8, 12, 12.5),
    outerFront: at(3.5, 30, 11.25),
    outerRear: at(-3.5, 30, 11.25),
  },
  upperLink: { inner: at(0, 12.5, 21.25), outer: at(0, 29.75, 20.25) },
});

/** The toe link lies where the planes of the two arms would put a third one, which keeps toe still. */
const doubleAArm = ({ at }: Typist): LinkageDocument => ({
  kind: "double-a-arm",
  lowerArm: { innerFront: at(8, 12, 12.5), innerRear: at(-8, 12, 12.5), outer: at(0, 30.5, 11) },
  upperArm: { innerFront: at(3, 14, 21), innerRear: at(-7, 14, 21), outer: at(0, 29.5, 20.5) },
  toeLink: { inner: at(-5, 12.75, 15.1875), outer: at(-5, 30.1875, 14) },
});

/**
 * Pivot axis raked about 4 deg, the inboard pivot behind the outboard one, and tilted with the stub axle: little change of
 * toe. The outboard pivot is far enough in that its tube passes the tyre.
 */
const trailingArm = ({ at }: Typist): LinkageDocument => ({
  kind: "trailing-arm",
  trailingArm: { inboardPivot: at(20, 13, 15), outboardPivot: at(20.75, 24.5, 15.125), hub: at(0, 30.25, 15.75) },
});

/** Two pairs of links that close in toward the wheel, and a toe link behind. */
const fiveLink = ({ at }: Typist): LinkageDocument => ({
  kind: "five-link",
  links: [
    { name: "front lower", inner: at(8, 12, 12.5), outer: at(3, 30.5, 11) },
    { name: "rear lower", inner: at(-8, 12, 12.5), outer: at(-3, 30.5, 11) },
    { name: "front upper", inner: at(6, 14, 21), outer: at(2.5, 29.5, 20.5) },
    { name: "rear upper", inner: at(-6, 14, 21), outer: at(-2.5, 29.5, 20.5) },
    { name: "toe", inner: at(-5, 12.75, 15.1875), outer: at(-5, 30.1875, 14) },
  ],
});

export const STARTING_LINKAGES: Readonly<Record<LinkageKindName, (t: Typist) => LinkageDocument>> = {
  "h-arm": hArm,
  "double-a-arm": doubleAArm,
  "trailing-arm": trailingArm,
  "five-link": fiveLink,
};
