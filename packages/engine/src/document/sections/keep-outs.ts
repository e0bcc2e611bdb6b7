import { z } from "zod";
import { type Assumed, inches, inchRange } from "../assumed.ts";
import { type Fields, fieldFacts, tellField } from "../fields.ts";

export const KEEP_OUT_ASSUMED = {
  clearance: {
    dimension: "length",
    from: () => inches(0.5),
    words: "1/2 in",
    because: "common practice: parts move, bend and grow",
  },
} as const satisfies Record<string, Assumed>;

export const KEEP_OUT_SHAPES = ["box", "tube", "half-space"] as const;

const shapeField = <const Shape extends string>(shape: Shape) => tellField(shape, "Shape of the keep-out.");

const commonFields = (f: Fields) => ({
  name: f.text("What it is, in the builder's words."),
  clearance: f
    .length("Gap wanted round it.", {
      sign: "not-negative",
      typical: inchRange(0.25, 2),
      assumed: KEEP_OUT_ASSUMED.clearance,
    })
    .exactOptional(),
});

const boxSection = (f: Fields) =>
  f.section("A box.", {
    shape: shapeField("box"),
    ...commonFields(f),
    centre: f.point("Middle of the box."),
    size: f.section("Its whole size, before it is turned.", {
      x: f.length("Fore and aft.", { sign: "positive" }),
      y: f.length("Across the car.", { sign: "positive" }),
      z: f.length("High.", { sign: "positive" }),
    }),
    turn: f
      .section("How the box is turned about its middle.", {
        axis: f.direction("The line that it is turned about."),
        angle: f.angle("How far, right-handed: thumb along the axis, fingers show the way."),
      })
      .exactOptional(),
  });

const tubeSection = (f: Fields) =>
  f.section("A round tube.", {
    shape: shapeField("tube"),
    ...commonFields(f),
    from: f.point("One end, on the tube's centre line."),
    to: f.point("The other end."),
    diameter: f.length("Outside diameter.", { sign: "positive", typical: inchRange(1, 3) }),
    part: f.oneOf(["frame"], "Given for a tube of the frame, which may carry a mount.").exactOptional(),
  });

const halfSpaceSection = (f: Fields) =>
  f.section("Everything behind a flat face, such as a firewall.", {
    shape: shapeField("half-space"),
    ...commonFields(f),
    point: f.point("Any point of the face."),
    normal: f.direction("Which way the face looks: toward the free side."),
  });

export const keepOutSection = (f: Fields) =>
  z
    .discriminatedUnion("shape", [boxSection(f), tubeSection(f), halfSpaceSection(f)], {
      error: () => KEEP_OUT_SHAPES.join("|"),
    })
    .register(fieldFacts, { meaning: "A thing to stay clear of: a box, a tube or a half-space." });
