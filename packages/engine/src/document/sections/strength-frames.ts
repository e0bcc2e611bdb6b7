import { z } from "zod";
import { type Fields, fieldFacts } from "../fields.ts";

export const FRAME_SHAPES = ["round-tube", "rectangular-tube", "flat-bar", "boxed-plate"] as const;
export type FrameShape = (typeof FRAME_SHAPES)[number];

/** Lengths that each shape needs. */
export const SHAPE_FIELDS = {
  "round-tube": ["diameter", "wall"],
  "rectangular-tube": ["width", "depth", "wall"],
  "flat-bar": ["width", "depth"],
  "boxed-plate": ["width", "depth", "wall", "coverWall"],
} as const satisfies Record<FrameShape, readonly string[]>;

const nodeSection = (f: Fields) =>
  f.section("A place where tubes meet or a load comes in, with the car at ride height.", {
    name: f.text("What it is called."),
    at: f
      .text("The pivot or mount that it is, which then gives its point: `lowerArm.innerFront`, `shock.lower`.")
      .exactOptional(),
    point: f.point("Where it is, for one that is neither.").exactOptional(),
  });

const memberSection = (f: Fields) =>
  f.section("A straight piece between two nodes.", {
    name: f.text("What it is called."),
    from: f.text("Name of the node where it begins."),
    to: f.text("Name of the node where it ends."),
    shape: f.oneOf(FRAME_SHAPES, "Round tube, rectangular tube, flat bar, or a box welded of four plates."),
    diameter: f.length("Outside diameter of a round tube.", { sign: "positive" }).exactOptional(),
    width: f.length("Outside size across, of the other shapes.", { sign: "positive" }).exactOptional(),
    depth: f.length("Outside size along `depthAxis`, of the other shapes.", { sign: "positive" }).exactOptional(),
    wall: f.length("Wall of a tube; thickness of a box's two side plates.", { sign: "positive" }).exactOptional(),
    coverWall: f.length("Thickness of a box's plates above and below.", { sign: "positive" }).exactOptional(),
    depthAxis: f
      .direction("Which way the depth points.", {
        assumed: { words: "as near upright as can be", because: "how it usually stands" },
      })
      .exactOptional(),
    material: f.text("Name of its material; that of the arm's tube where left out.").exactOptional(),
  });

/** Frames that the builder drew himself, by arm. */
export const strengthFramesSection = (f: Fields) =>
  z
    .record(
      z.string(),
      f.section("The frame of one arm.", {
        nodes: f.list("Its nodes.", nodeSection(f)),
        members: f.list("Its members.", memberSection(f)),
      }),
      { error: () => "an object in braces" },
    )
    .register(fieldFacts, {
      meaning:
        "Arms as welded frames, by `lower-arm`, `upper-arm` or `trailing-arm`. Where left out, one is made from the car's points: its tubes, cross tubes, and stiff tabs where shock, stop and strap sit.",
    });
