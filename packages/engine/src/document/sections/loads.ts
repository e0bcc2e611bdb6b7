import { z } from "zod";
import type { UnitSystem } from "../../car/car.ts";
import { STRUTS } from "../../loads/struts.ts";
import { parseLength } from "../../units/tape.ts";
import type { Assumed } from "../assumed.ts";
import { type Fields, fieldFacts } from "../fields.ts";
import { DIMENSION_LIMITS } from "../limits.ts";

export const LOADS_ASSUMED = {
  grip: {
    dimension: "ratio",
    from: () => 1,
    words: "1",
    because: "common practice, on the high side: rock and dry ground; sand and dirt give less",
  },
  wheelShare: {
    dimension: "percent",
    from: () => 0.5,
    words: "50 %",
    because: "both wheels pull alike; with a spool or a locked differential one wheel can get all",
  },
} as const satisfies Record<string, Assumed>;

export const CASE_PLACES = ["ride", "half-bump", "full-bump", "half-droop", "full-droop"] as const;
export const CASE_POINTS = ["contact", "centre"] as const;
export const CASE_WEIGHTS = ["corner", "unsprung"] as const;
export const CASE_TURNINGS = ["rolling", "brake", "shaft"] as const;
export const YES_NO = ["yes", "no"] as const;

/** Of a case of the table what is left out stays; of a new one it is this. */
const WORDS = (words: string) => ({ assumed: { words, because: "of a case of the table: as it stands there" } });

/** A named height of the wheel, or the travel itself as a length. */
function placeField(system: UnitSystem) {
  const expected = `${CASE_PLACES.join("|")}|a travel`;
  return z
    .union([z.number(), z.string()], { error: () => expected })
    .superRefine((value, context) => {
      if (CASE_PLACES.some((place) => place === value)) return;
      const travel = parseLength(value, system);
      const limit = DIMENSION_LIMITS.length;
      const put = (fault: { readonly code: string; readonly [name: string]: unknown }) =>
        context.addIssue({ code: "custom", message: fault.code, params: fault });
      if (!travel.ok && travel.suggestion !== undefined)
        put({ code: "bad-quantity", expected: "a length", suggestion: travel.suggestion });
      else if (!travel.ok) put({ code: "unknown-word", options: [...CASE_PLACES, "a travel"] });
      else if (limit && Math.abs(travel.metres) > limit.most) put({ code: "too-large", expected: limit.words });
    })
    .register(fieldFacts, {
      meaning: "Where the wheel is: a height by name, or a travel (bump positive).",
      dimension: "length",
      ...WORDS("ride"),
    });
}

const caseSection = (f: Fields, system: UnitSystem) =>
  f.section("One load on one rear wheel. A name of the table changes that case; another name adds one.", {
    name: f.text("What it is called."),
    skip: f.oneOf(YES_NO, "`yes` leaves a case of the table out.", WORDS("no")).exactOptional(),
    at: placeField(system).exactOptional(),
    carrier: f.oneOf(STRUTS, "What holds the wheel up.", WORDS("shock")).exactOptional(),
    vertical: f.quantity("ratio", "Up on the tyre, in g: times what the wheel carries.", WORDS("1")).exactOptional(),
    inward: f.quantity("ratio", "On the tyre toward the car's centreline, in g.", WORDS("0")).exactOptional(),
    forward: f.quantity("ratio", "Forward, in g; braking and strikes are negative.", WORDS("0")).exactOptional(),
    acts: f
      .oneOf(CASE_POINTS, "Where inward and forward act: at the ground or at the wheel centre.", WORDS("contact"))
      .exactOptional(),
    of: f.oneOf(CASE_WEIGHTS, "Which weight a g is of.", WORDS("corner")).exactOptional(),
    turning: f
      .oneOf(CASE_TURNINGS, "Whether the wheel rolls, is braked on the spindle, or driven.", WORDS("rolling"))
      .exactOptional(),
    limited: f
      .oneOf(YES_NO, "Whether forward goes no farther than grip and engine let it.", WORDS("no"))
      .exactOptional(),
  });

/** What loads the wheel: drive, grip and the table of cases. */
export const loadsSection = (f: Fields, system: UnitSystem) =>
  f.section("What loads a rear wheel: drive, grip, and changes to the table of load cases.", {
    grip: f
      .quantity("ratio", "Friction between tyre and ground.", {
        sign: "positive",
        typical: { from: 0.4, to: 1.2 },
        assumed: LOADS_ASSUMED.grip,
      })
      .exactOptional(),
    engineTorque: f.quantity("torque", "Most torque of the engine.", { sign: "positive" }).exactOptional(),
    gearing: f
      .quantity("ratio", "Turns of the engine for one turn of the wheel, lowest gear.", {
        sign: "positive",
        typical: { from: 8, to: 60 },
      })
      .exactOptional(),
    wheelShare: f
      .quantity("percent", "Of the torque what one wheel gets.", {
        sign: "positive",
        assumed: LOADS_ASSUMED.wheelShare,
      })
      .exactOptional(),
    cases: f
      .list("Load cases changed or added; the table itself is common practice.", caseSection(f, system))
      .exactOptional(),
  });
