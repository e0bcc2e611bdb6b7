import { z } from "zod";
import { type Assumed, degreeRange, degrees, inches, inchRange } from "../assumed.ts";
import { type Fields, fieldFacts, tellField } from "../fields.ts";

const because = "common practice";
const within = (parts: number, words: string) =>
  ({ dimension: "length", from: () => inches(parts), words, because }) as const satisfies Assumed;

/** The ± of a reading that has none of its own: two standard deviations. */
export const SURVEY_ASSUMED = {
  tape: within(1 / 16, "1/16 in"),
  height: within(1 / 16, "1/16 in"),
  out: within(1 / 8, "1/8 in"),
  along: within(1 / 8, "1/8 in"),
  level: { dimension: "angle", from: () => degrees(0.2), words: "0.2 deg", because },
  inLine: within(1 / 8, "1/8 in"),
  offset: within(1 / 32, "1/32 in"),
  mirror: within(1 / 8, "1/8 in"),
} as const satisfies Record<string, Assumed>;

export const READING_KINDS = ["tape", "height", "out", "along", "level", "in-line", "offset", "mirror"] as const;
export const POINT_SIDES = ["left", "right", "centre"] as const;
export const ADJUSTMENTS = ["constrained", "free"] as const;

const kindField = <const Kind extends string>(kind: Kind) => tellField(kind, "What kind of reading it is.");

const common = (f: Fields) => ({
  plusMinus: f
    .length("How far off it may be, either way (about 95 in 100 are within).", {
      sign: "positive",
      typical: inchRange(1 / 32, 0.5),
    })
    .exactOptional(),
  deferred: z
    .boolean({ error: () => "true or false" })
    .register(fieldFacts, { meaning: "Wanted, not taken yet: it counts for nothing and is suggested first." })
    .exactOptional(),
});

const lengthFields = (f: Fields) => ({
  reads: f.length("As the tape reads.").exactOptional(),
  add: f
    .length("Added to what the tape reads: half a tube's diameter where it touched the surface and not the centre.")
    .exactOptional(),
  ...common(f),
});

const partial = (f: Fields, meaning: string) =>
  f.section(meaning, {
    x: f.length("Forward of the datum; behind it is negative.").exactOptional(),
    y: f.length("Out from the car's centreline: left positive, right negative.").exactOptional(),
    z: f.length("Up from the ground at ride height.").exactOptional(),
  });

const pointSection = (f: Fields) =>
  f.section("A named point on the car.", {
    name: f.text("What it is, in the builder's words."),
    side: f.oneOf(POINT_SIDES, "Side of the centreline that it is on: settles left against right.").exactOptional(),
    fixed: partial(f, "Coordinates that hold exactly; those left out come from readings.").exactOptional(),
    rough: partial(
      f,
      "Coordinates that are roughly known: they choose between mirrored solutions only.",
    ).exactOptional(),
  });

const readingSection = (f: Fields) =>
  z
    .discriminatedUnion(
      "kind",
      [
        f.section("Tape between two points.", {
          kind: kindField("tape"),
          from: f.text("Name of the one point."),
          to: f.text("Name of the other."),
          ...lengthFields(f),
        }),
        f.section("Height off the floor, or above the level through another point.", {
          kind: kindField("height"),
          point: f.text("Name of the point."),
          above: f.text("Name of the point that the level line goes through; left out: the floor.").exactOptional(),
          ...lengthFields(f),
        }),
        f.section("Plumb-bob mark out from the centreline, or from a string along the car.", {
          kind: kindField("out"),
          point: f.text("Name of the point."),
          from: f.text("Name of the point that the string goes through; left out: the centreline.").exactOptional(),
          ...lengthFields(f),
        }),
        f.section("Plumb-bob mark along the car: forward of the datum, or of another point.", {
          kind: kindField("along"),
          point: f.text("Name of the point."),
          from: f.text("Name of the point that it is read from; left out: the datum.").exactOptional(),
          ...lengthFields(f),
        }),
        f.section("Level or angle finder on a bar across two points.", {
          kind: kindField("level"),
          from: f.text("Name of the one point."),
          to: f.text("Name of the other."),
          reads: f.angle("Angle of the bar against the level; positive when the second is the higher.").exactOptional(),
          ...common(f),
          plusMinus: f
            .angle("How far off it may be, either way.", { sign: "positive", typical: degreeRange(0.1, 1) })
            .exactOptional(),
        }),
        f.section("A point that lies on the line through two others.", {
          kind: kindField("in-line"),
          point: f.text("Name of the point on the line."),
          from: f.text("Name of the one point."),
          to: f.text("Name of the other."),
          ...common(f),
        }),
        f.section("How one point is known to lie from another, such as hub face to wheel plane.", {
          kind: kindField("offset"),
          from: f.text("Name of the one point."),
          to: f.text("Name of the other."),
          by: partial(f, "How the second lies from the first; axes left out are not known."),
          ...common(f),
        }),
        f.section("Two points that are each other's image in the centreline.", {
          kind: kindField("mirror"),
          left: f.text("Name of the point on the left."),
          right: f.text("Name of the point on the right."),
          ...common(f),
        }),
      ],
      { error: () => READING_KINDS.join("|") },
    )
    .register(fieldFacts, { meaning: "A reading off the car." });

export const surveySection = (f: Fields) =>
  f.section("The car as taped: named points and readings, from which coordinates follow.", {
    adjustment: f
      .oneOf(
        ADJUSTMENTS,
        "Whether fixed coordinates hold, or the net is free and only laid on them with the least movement.",
        { assumed: { words: "constrained", because: "fixed coordinates are meant to hold" } },
      )
      .exactOptional(),
    uncertainty: f
      .section("How far off a reading of each kind may be, either way (about 95 in 100 are within).", {
        tape: f.length("Tape between two points.", { sign: "positive", assumed: SURVEY_ASSUMED.tape }).exactOptional(),
        height: f
          .length("Height off floor or level.", { sign: "positive", assumed: SURVEY_ASSUMED.height })
          .exactOptional(),
        out: f.length("Plumb-bob mark out.", { sign: "positive", assumed: SURVEY_ASSUMED.out }).exactOptional(),
        along: f.length("Plumb-bob mark along.", { sign: "positive", assumed: SURVEY_ASSUMED.along }).exactOptional(),
        level: f.angle("Level or angle finder.", { sign: "positive", assumed: SURVEY_ASSUMED.level }).exactOptional(),
        inLine: f.length("Point on a line.", { sign: "positive", assumed: SURVEY_ASSUMED.inLine }).exactOptional(),
        offset: f.length("Known offset.", { sign: "positive", assumed: SURVEY_ASSUMED.offset }).exactOptional(),
        mirror: f.length("Mirror image.", { sign: "positive", assumed: SURVEY_ASSUMED.mirror }).exactOptional(),
      })
      .exactOptional(),
    points: f.list("The points, each with a name of its own.", pointSection(f)),
    readings: f.list("The readings, in any order; one that is taken twice is entered twice.", readingSection(f)),
  });
