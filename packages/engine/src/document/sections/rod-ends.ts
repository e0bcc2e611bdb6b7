import { z } from "zod";
import { type Assumed, degreeRange, inches, inchRange } from "../assumed.ts";
import { BODIES, type Fields, fieldFacts } from "../fields.ts";
import { JOINT_ANGLE_LIMIT } from "../limits.ts";

export const ROD_END_ASSUMED = {
  hand: {
    dimension: "word",
    from: (end: "inner" | "outer-link" | "outer") => (end === "outer-link" ? "left" : "right"),
    words: "left at a link's outer end, right elsewhere",
    because: "common practice: a link has one of each hand, so that turning it changes its length",
  },
  headDiameter: {
    dimension: "length",
    from: () => inches(1.75),
    words: "2.4 of the thread's diameter; 1 3/4 in where no thread is given",
    because: "common practice: the head of a 3/4 in rod end",
  },
  headDiameterOfThread: {
    dimension: "length",
    from: (diameter: number) => 2.4 * diameter,
    words: "2.4 of the thread's diameter",
    because: "common practice: a rod end's head is about 2.4 of its thread's diameter",
  },
} as const satisfies Record<string, Assumed<never>>;

const rodEndSection = (f: Fields) =>
  f.section("One rod end.", {
    boltAxis: f
      .direction("Which way its bolt points at ride height.", {
        assumed: {
          words: "along the arm's hinge line; at a link, level and square to the link",
          because: "common practice: the bracket is turned so that the pull runs square to the bolt",
        },
      })
      .exactOptional(),
    boltOn: f
      .oneOf(BODIES, "The part that holds the bolt; the shank is then on the other one.", {
        assumed: { words: "chassis at inner ends, spindle at outer ends", because: "common practice" },
      })
      .exactOptional(),
    misalignmentLimit: f
      .angle("Most that it may tilt either way with its spacers, from its maker or with an angle finder.", {
        sign: "positive",
        limit: JOINT_ANGLE_LIMIT,
        typical: degreeRange(12, 34),
      })
      .exactOptional(),
    thread: f.thread("Shank thread as sold: `3/4-16` or `M16x1.5`.").exactOptional(),
    hand: f.oneOf(["right", "left"], "Hand of the shank's thread.", { assumed: ROD_END_ASSUMED.hand }).exactOptional(),
    headDiameter: f
      .length("Across the round head.", {
        sign: "positive",
        typical: inchRange(1, 3),
        assumed: ROD_END_ASSUMED.headDiameter,
      })
      .exactOptional(),
    length: f
      .length("From the middle of the ball to the end of the thread: what a tube is cut shorter for.", {
        sign: "positive",
        typical: inchRange(1.5, 4.5),
      })
      .exactOptional(),
  });

export const rodEndsSection = (f: Fields) =>
  z.record(z.string(), rodEndSection(f), { error: () => "an object in braces" }).register(fieldFacts, {
    meaning:
      "What is known of single rod ends, each under the name of its pivot: `lowerArm.innerFront`, `upperLink.outer`, `links.NAME.inner`.",
  });
