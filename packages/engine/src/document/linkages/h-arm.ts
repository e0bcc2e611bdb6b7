import { inchRange } from "../assumed.ts";
import type { Fields } from "../fields.ts";
import { hingePivots, kindField, type LinkageForm, linkPivots, TUBE_ASSUMED } from "./form.ts";
import { linkSection } from "./link.ts";

export const hArmSection = (f: Fields) =>
  f.section("A lower arm hinged to chassis and spindle on two rod ends each, and one upper link.", {
    kind: kindField("h-arm"),
    lowerArm: f.section("The H-arm.", {
      innerFront: f.point("Front pivot at the chassis."),
      innerRear: f.point("Rear pivot at the chassis."),
      outerFront: f.point("Front pivot at the spindle."),
      outerRear: f.point("Rear pivot at the spindle."),
      diameter: f
        .length("Outside diameter of its tubes.", {
          sign: "positive",
          typical: inchRange(1.25, 2),
          assumed: TUBE_ASSUMED.arm,
        })
        .exactOptional(),
    }),
    upperLink: linkSection(f, "The upper link; its length sets camber."),
  });

const INNER = [
  ["lowerArm", "innerFront"],
  ["lowerArm", "innerRear"],
] as const;
const OUTER = [
  ["lowerArm", "outerFront"],
  ["lowerArm", "outerRear"],
] as const;

export const H_ARM: LinkageForm = {
  kind: "h-arm",
  arms: ["lower-arm"],
  pivots: () => [
    ...hingePivots("lowerArm", "lower-arm", "inner", ["innerFront", "innerRear"], ["innerRear", "innerFront"]),
    ...hingePivots("lowerArm", "lower-arm", "outer", ["outerFront", "outerRear"], ["outerRear", "outerFront"]),
    ...linkPivots("upperLink", ["upperLink"]),
  ],
  axes: [INNER, OUTER],
  offAxis: [
    { point: OUTER[0], axis: INNER },
    { point: OUTER[1], axis: INNER },
  ],
  apart: () => [
    [
      ["upperLink", "inner"],
      ["upperLink", "outer"],
    ],
  ],
};
