import { inches, inchRange } from "../assumed.ts";
import type { Fields } from "../fields.ts";
import { hingePivots, kindField, type LinkageForm, TUBE_ASSUMED } from "./form.ts";

/** From the hub face in to the middle of a hub carrier, m. */
export const HUB_INBOARD = inches(4);

export const TRAILING_ARM_ASSUMED = {
  hub: { words: "4 in inboard of the hub face", because: "common practice: about the middle of a hub carrier" },
} as const;

export const trailingArmSection = (f: Fields) =>
  f.section("One arm, welded to the spindle, that turns about the line through its two pivots.", {
    kind: kindField("trailing-arm"),
    trailingArm: f.section("The trailing arm.", {
      inboardPivot: f.point("The pivot nearer the centreline."),
      outboardPivot: f.point("The pivot nearer the wheel."),
      hub: f.point("Where its tubes end at the hub.", { assumed: TRAILING_ARM_ASSUMED.hub }).exactOptional(),
      diameter: f
        .length("Outside diameter of its tubes.", {
          sign: "positive",
          typical: inchRange(1.25, 2.5),
          assumed: TUBE_ASSUMED.arm,
        })
        .exactOptional(),
    }),
  });

const AXIS = [
  ["trailingArm", "inboardPivot"],
  ["trailingArm", "outboardPivot"],
] as const;

export const TRAILING_ARM: LinkageForm = {
  kind: "trailing-arm",
  arms: ["trailing-arm"],
  pivots: () =>
    hingePivots(
      "trailingArm",
      "trailing-arm",
      "inner",
      ["inboardPivot", "outboardPivot"],
      ["inboardPivot", "outboardPivot"],
    ),
  axes: [AXIS],
  offAxis: [{ point: ["trailingArm", "hub"], axis: AXIS }],
  apart: () => [],
};
