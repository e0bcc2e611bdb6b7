import { z } from "zod";
import type { UnitSystem, Use } from "../../car/car.ts";
import { parseLength } from "../../units/tape.ts";
import { type Assumed, inches, inchRange } from "../assumed.ts";
import { type Fields, fieldFacts } from "../fields.ts";
import { DIMENSION_LIMITS } from "../limits.ts";

export const CHASSIS_ASSUMED = {
  wheelbase: {
    dimension: "length",
    from: () => inches(100),
    words: "100 in",
    because: "none given; only anti-squat and anti-lift rest on it",
  },
  centreOfGravityHeight: {
    dimension: "length",
    from: () => inches(24),
    words: "24 in",
    because: "common practice for a buggy with people in; only anti-squat and anti-lift rest on it",
  },
  rearBrakeShare: {
    dimension: "percent",
    from: () => 0.4,
    words: "40 %",
    because: "common practice; only anti-lift rests on it",
  },
} as const satisfies Record<string, Assumed>;

export const STOPS_ASSUMED = {
  bump: {
    dimension: "length",
    from: () => inches(6),
    words: "the bump stop where there is one, else the bump aimed at, else 6 in",
    because: "no stop and no target given",
  },
  droop: {
    dimension: "length",
    from: () => inches(4),
    words: "the strap where there is one, else the droop aimed at, else 4 in",
    because: "no stop and no target given",
  },
} as const satisfies Record<string, Assumed>;

export const weightsSection = (f: Fields) =>
  f.section("Weights, and where they are.", {
    corner: f
      .quantity("mass", "What one rear wheel carries on the scale, people in, tank half full.", { sign: "positive" })
      .exactOptional(),
    unsprung: f
      .quantity("mass", "Of that, what is not sprung: wheel, hub, brake, half of arm, shaft and shock.", {
        sign: "positive",
      })
      .exactOptional(),
    centreOfGravityHeight: f
      .length("Centre of gravity of the whole car above the ground.", {
        sign: "positive",
        typical: inchRange(18, 36),
        assumed: CHASSIS_ASSUMED.centreOfGravityHeight,
      })
      .exactOptional(),
    rearBrakeShare: f
      .quantity("percent", "Share of the braking that the rear wheels do.", {
        sign: "not-negative",
        typical: { from: 0.3, to: 0.5 },
        assumed: CHASSIS_ASSUMED.rearBrakeShare,
      })
      .exactOptional(),
  });

export const USES = ["dune", "desert", "trail"] as const satisfies readonly Use[];

export const targetsSection = (f: Fields) =>
  f.section("What the builder is after.", {
    bump: f
      .length("Wheel travel up from ride height.", { sign: "positive", typical: inchRange(5, 12) })
      .exactOptional(),
    droop: f
      .length("Wheel travel down from ride height.", { sign: "positive", typical: inchRange(3, 10) })
      .exactOptional(),
    clearanceAtFullBump: f
      .length("Left under the body with both wheels at full bump.", { sign: "any", typical: inchRange(2, 4) })
      .exactOptional(),
    trackWidth: f
      .length("Between the middles of the two tyres on the ground.", { sign: "positive", typical: inchRange(55, 90) })
      .exactOptional(),
    wheelbase: f
      .length("Between front and rear tyres on the ground.", {
        sign: "positive",
        typical: inchRange(85, 125),
        assumed: CHASSIS_ASSUMED.wheelbase,
      })
      .exactOptional(),
    use: f.oneOf(USES, "What the car is for: decides which ride frequency is common practice for it.").exactOptional(),
  });

export const BUMP_STOPPERS = ["bump-stop", "shock"] as const;
export const DROOP_STOPPERS = ["strap", "shock"] as const;

/** A part's name, or the travel itself as a length. */
function stopField(system: UnitSystem, parts: readonly string[], meaning: string, assumed: Assumed) {
  const expected = `${parts.join("|")}|a travel`;
  return z
    .union([z.number(), z.string()], { error: () => expected })
    .superRefine((value, context) => {
      if (parts.some((part) => part === value)) return;
      const fault = travelFault(value, system, parts);
      if (fault) context.addIssue({ code: "custom", message: fault.code, params: fault });
    })
    .register(fieldFacts, {
      meaning,
      dimension: "length",
      assumed: { words: assumed.words, because: "the part made for it comes first" },
    });
}

function travelFault(value: number | string, system: UnitSystem, parts: readonly string[]) {
  const travel = parseLength(value, system);
  const limit = DIMENSION_LIMITS.length;
  if (!travel.ok && travel.suggestion !== undefined) {
    return { code: "bad-quantity", expected: "a length", suggestion: travel.suggestion };
  }
  if (!travel.ok) return { code: "unknown-word", options: [...parts, "a travel"] };
  if (limit && travel.metres > limit.most) return { code: "too-large", expected: limit.words };
  return travel.metres <= 0 ? { code: "not-positive" } : undefined;
}

export const stopsSection = (f: Fields, system: UnitSystem) =>
  f.section("What ends the travel by the builder's choice.", {
    bump: stopField(system, BUMP_STOPPERS, "`bump-stop`, `shock`, or a travel.", STOPS_ASSUMED.bump).exactOptional(),
    droop: stopField(
      system,
      DROOP_STOPPERS,
      "`strap`, `shock`, or a travel (positive).",
      STOPS_ASSUMED.droop,
    ).exactOptional(),
  });

export const underbodySection = (f: Fields) =>
  f.list(
    "Low points under the body that can touch the ground.",
    f.section("A low point.", { name: f.text("What it is."), ...f.point("").shape }),
  );
