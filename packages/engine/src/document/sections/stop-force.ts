import { POUND_FORCE, PSI } from "../../units/convert.ts";
import { type Assumed, inches, inchRange } from "../assumed.ts";
import type { Fields } from "../fields.ts";

/** What the room of a gas stop is assumed from: rod, m, and stroke, m. */
export interface StopRod {
  readonly diameter: number;
  readonly stroke: number;
}

export const STOP_FORCE_ASSUMED = {
  rubberDiameter: { dimension: "length", from: () => inches(2), words: "2 in", because: "common practice: a 2 in pad" },
  hardness: { dimension: "count", from: () => 60, words: "60", because: "from memory: a middling rubber" },
  pressure: {
    dimension: "pressure",
    from: () => 100 * PSI,
    words: "100 psi",
    because: "common practice: start at 75 to 150 psi",
  },
  rodDiameter: { dimension: "length", from: () => inches(1), words: "1 in", because: "from memory; measure it" },
  volume: {
    dimension: "volume",
    from: ({ diameter, stroke }) => 1.25 * (Math.PI / 4) * diameter ** 2 * stroke,
    words: "1.25 times what the rod displaces over the whole stroke",
    because: "from memory; the oil that is poured in sets it",
  },
  stretch: {
    dimension: "percent",
    from: () => 0.075,
    words: "7.5 % under 2 000 lb",
    because: "common practice: 5 to 10 % under a snatch; the pull at which, from memory",
  },
} as const satisfies Record<string, Assumed<StopRod>>;

export const rubberSection = (f: Fields) =>
  f.section("A round rubber pad, as tall as the stop reaches.", {
    diameter: f
      .length("Across the pad.", {
        sign: "positive",
        typical: inchRange(1.5, 3),
        assumed: STOP_FORCE_ASSUMED.rubberDiameter,
      })
      .exactOptional(),
    hardness: f
      .quantity("count", "Shore A, as marked on it. Stiffness after it is good to a factor of two.", {
        sign: "positive",
        limit: { most: 95, words: "Shore A 95" },
        assumed: STOP_FORCE_ASSUMED.hardness,
      })
      .exactOptional(),
  });

export const stopGasSection = (f: Fields) =>
  f.section("A gas stop: a rod that goes into a closed charge.", {
    pressure: f
      .quantity("pressure", "As the gauge reads, rod out and cold.", {
        sign: "not-negative",
        typical: { from: 50 * PSI, to: 300 * PSI },
        assumed: STOP_FORCE_ASSUMED.pressure,
      })
      .exactOptional(),
    rodDiameter: f
      .length("Of the rod that goes in.", { sign: "positive", assumed: STOP_FORCE_ASSUMED.rodDiameter })
      .exactOptional(),
    volume: f
      .quantity("volume", "Room that the gas has, rod out.", { sign: "positive", assumed: STOP_FORCE_ASSUMED.volume })
      .exactOptional(),
  });

const pounds = (from: number, to: number) => ({ from: from * POUND_FORCE, to: to * POUND_FORCE });

export const measuredStopSection = (f: Fields) =>
  f.list(
    "Push measured at squeezes, e.g. in a press with a gauge; straight between them.",
    f.section("One reading.", {
      squeeze: f.length("From the first touch.", { sign: "not-negative", typical: inchRange(0.25, 3) }),
      force: f.quantity("force", "The push there.", { sign: "not-negative", typical: pounds(100, 6000) }),
    }),
  );

export const stretchSection = (f: Fields) =>
  f.list(
    "How far the strap stretches under a pull; one reading is a straight line.",
    f.section("One reading.", {
      percent: f.quantity("percent", "Longer by this share.", {
        sign: "positive",
        typical: { from: 0.05, to: 0.1 },
        assumed: STOP_FORCE_ASSUMED.stretch,
      }),
      force: f.quantity("force", "The pull there.", { sign: "positive", typical: pounds(1000, 6000) }),
    }),
  );

export const holeSpacingField = (f: Fields, meaning: string) =>
  f.length(meaning, { sign: "positive", typical: inchRange(0.5, 1.5) }).exactOptional();
