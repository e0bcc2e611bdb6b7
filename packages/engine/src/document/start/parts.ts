import type { LinkageKindName } from "../../car/car.ts";
import type { BumpStopDocument, DriveshaftDocument, ShockDocument, StrapDocument, WheelDocument } from "../schema.ts";
import type { Typist } from "./typed.ts";

/** A 33 in tyre on a 15 x 8 rim; its middle plane is at y = 36. */
export const startingWheel = ({ at, size }: Typist): WheelDocument => ({
  hubFace: at(0, 35.5, 15.75),
  camber: -0.5,
  backspacing: size(4),
  freeRadius: size(16.5),
  loadedRadius: size(15.75),
  sectionWidth: size(12.5),
  rimDiameter: size(15),
  rimWidth: size(8),
});

export const startingDriveshaft = (
  { at, size }: Typist,
  kind: "u-joint" | "constant-velocity",
): DriveshaftDocument => ({
  output: { point: at(0, 10, 16.25) },
  inner: { kind, angleLimit: 28 },
  outer: { centre: at(0, 29, 15.75), kind, angleLimit: 28 },
  slip: { engagement: size(3.5), leastEngagement: size(1.5), pushInLeft: size(1.25) },
});

export interface StartingStops {
  readonly shock: ShockDocument;
  readonly strap: StrapDocument;
  readonly bumpStop: BumpStopDocument;
}

/** Shock behind the shaft, strap and bump stop before it. */
const onHArm = ({ at, size }: Typist): StartingStops => ({
  shock: {
    upper: at(-4.5, 17, 32),
    lower: { ...at(-4.5, 24, 12.5), on: "lower-arm" },
    shortest: size(15.25),
    longest: size(25),
  },
  strap: { upper: at(6, 17, 25), lower: { ...at(6, 24, 12.25), on: "lower-arm" }, length: size(18) },
  bumpStop: {
    base: at(3.5, 21, 17.125),
    strikes: { ...at(3.5, 22, 12.25), on: "lower-arm" },
    reach: size(2.5),
    solid: size(1),
  },
});

/** Shock before the shaft and clear of the upper arm's front tube, strap behind the shaft. */
const onDoubleAArm = ({ at, size }: Typist): StartingStops => ({
  shock: {
    upper: at(5.5, 17, 32),
    lower: { ...at(5.5, 24, 12.5), on: "lower-arm" },
    shortest: size(15.25),
    longest: size(25),
  },
  strap: { upper: at(-2.5, 16, 19.5), lower: { ...at(-2.5, 24, 12.25), on: "lower-arm" }, length: size(13.375) },
  bumpStop: {
    base: at(2.5, 21, 16.875),
    strikes: { ...at(2.5, 22, 12.25), on: "lower-arm" },
    reach: size(2.5),
    solid: size(1),
  },
});

const onTrailingArm = ({ at, size }: Typist): StartingStops => ({
  shock: {
    upper: at(7, 20, 36),
    lower: { ...at(4, 25, 13), on: "trailing-arm" },
    shortest: size(17),
    longest: size(28.75),
  },
  strap: { upper: at(9, 18, 25), lower: { ...at(7, 24, 13), on: "trailing-arm" }, length: size(16.875) },
  bumpStop: {
    base: at(10, 24, 18.625),
    strikes: { ...at(10, 24, 14), on: "trailing-arm" },
    reach: size(2.5),
    solid: size(1),
  },
});

/** A five-link has no arm to bolt to: all three stand on the spindle. */
const onSpindle = ({ at, size }: Typist): StartingStops => ({
  shock: {
    upper: at(7.25, 20, 42),
    lower: { ...at(7.25, 26.5, 13), on: "spindle" },
    shortest: size(22),
    longest: size(36),
  },
  strap: { upper: at(9, 18, 26), lower: { ...at(9, 26.5, 13), on: "spindle" }, length: size(20.25) },
  bumpStop: {
    base: at(-7.5, 26.5, 21.5),
    strikes: { ...at(-7.5, 27, 14), on: "spindle" },
    reach: size(3),
    solid: size(1),
  },
});

export const STARTING_STOPS: Readonly<Record<LinkageKindName, (t: Typist) => StartingStops>> = {
  "h-arm": onHArm,
  "double-a-arm": onDoubleAArm,
  "trailing-arm": onTrailingArm,
  "five-link": onSpindle,
};
