import { inchRange } from "../assumed.ts";
import type { Fields } from "../fields.ts";
import { hingePivots, kindField, type LinkageForm, linkPivots, TUBE_ASSUMED } from "./form.ts";
import { linkSection } from "./link.ts";

const aArmSection = (f: Fields, meaning: string) =>
  f.section(meaning, {
    innerFront: f.point("Front pivot at the chassis."),
    innerRear: f.point("Rear pivot at the chassis."),
    outer: f.point("Pivot at the spindle."),
    diameter: f
      .length("Outside diameter of its tubes.", {
        sign: "positive",
        typical: inchRange(1.25, 2),
        assumed: TUBE_ASSUMED.arm,
      })
      .exactOptional(),
  });

export const doubleAArmSection = (f: Fields) =>
  f.section("Two A-arms and a toe link.", {
    kind: kindField("double-a-arm"),
    lowerArm: aArmSection(f, "The lower A-arm."),
    upperArm: aArmSection(f, "The upper A-arm."),
    toeLink: linkSection(f, "The toe link; its length sets toe."),
  });

const ARMS = [
  { arm: "lowerArm", body: "lower-arm" },
  { arm: "upperArm", body: "upper-arm" },
] as const;

const hingeOf = (arm: string) =>
  [
    [arm, "innerFront"],
    [arm, "innerRear"],
  ] as const;

export const DOUBLE_A_ARM: LinkageForm = {
  kind: "double-a-arm",
  arms: ["lower-arm", "upper-arm"],
  pivots: () => [
    ...ARMS.flatMap(({ arm, body }) => [
      ...hingePivots(arm, body, "inner", ["innerFront", "innerRear"], ["innerRear", "innerFront"]),
      ...hingePivots(arm, body, "outer", ["outer"], ["innerRear", "innerFront"]),
    ]),
    ...linkPivots("toeLink", ["toeLink"]),
  ],
  axes: ARMS.map(({ arm }) => hingeOf(arm)),
  offAxis: ARMS.map(({ arm }) => ({ point: [arm, "outer"], axis: hingeOf(arm) })),
  apart: () => [
    [
      ["lowerArm", "outer"],
      ["upperArm", "outer"],
    ],
    [
      ["toeLink", "inner"],
      ["toeLink", "outer"],
    ],
  ],
};
