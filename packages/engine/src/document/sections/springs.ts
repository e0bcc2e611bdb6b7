import { POUND_FORCE_PER_INCH, PSI } from "../../units/convert.ts";
import { type Assumed, inches, inchRange, type Typical } from "../assumed.ts";
import type { Fields } from "../fields.ts";

export const SPRINGS_ASSUMED = {
  solidLength: {
    dimension: "length",
    from: (freeLength: number) => 0.42 * freeLength,
    words: "0.42 of the free length",
    because: "from memory; press one solid in a vice or ask its maker",
  },
  preload: {
    dimension: "length",
    from: () => inches(1),
    words: "1 in",
    because: "common practice: 1/2 to 2 in",
  },
  collarPitch: {
    dimension: "length",
    from: () => inches(1 / 12),
    words: "1/12 in",
    because: "from memory: a common collar thread; turn ten times and measure",
  },
  crossoverAt: {
    dimension: "word",
    from: () => "no stop",
    words: "no stop: both springs work together until one is solid",
    because: "none given",
  },
} as const satisfies Record<string, Assumed<number>>;

/** What the volume of the gas is assumed from. */
export interface RodStroke {
  readonly rodDiameter: number;
  readonly stroke: number;
}

export const GAS_ASSUMED = {
  pressure: {
    dimension: "pressure",
    from: () => 200 * PSI,
    words: "200 psi",
    because: "common practice: 150 to 250 psi",
  },
  rodDiameter: {
    dimension: "length",
    from: () => inches(7 / 8),
    words: "7/8 in",
    because: "common practice on a 2 1/2 in shock",
  },
  volume: {
    dimension: "volume",
    from: ({ rodDiameter, stroke }) => 3 * (Math.PI / 4) * rodDiameter ** 2 * stroke,
    words: "three times what the rod displaces over the whole stroke",
    because: "from memory; measure or ask the maker",
  },
} as const satisfies Record<string, Assumed<RodStroke>>;

const rateRange = (from: number, to: number): Typical => ({
  from: from * POUND_FORCE_PER_INCH,
  to: to * POUND_FORCE_PER_INCH,
});
const pressureRange = (from: number, to: number): Typical => ({ from: from * PSI, to: to * PSI });

const springSection = (f: Fields, meaning: string) =>
  f.section(meaning, {
    rate: f.quantity("rate", "Force for each inch or millimetre that it is squeezed, as marked on it.", {
      sign: "positive",
      typical: rateRange(100, 600),
    }),
    freeLength: f.length("Off the car, nothing on it.", { sign: "positive", typical: inchRange(8, 18) }),
    solidLength: f
      .length("Squeezed until coil lies on coil.", {
        sign: "positive",
        typical: inchRange(3, 8),
        assumed: SPRINGS_ASSUMED.solidLength,
      })
      .exactOptional(),
  });

export const springsSection = (f: Fields) =>
  f.section("Spring on the shock, or two in series with a slider between them.", {
    main: springSection(f, "The only spring; of two the stiffer one, which works alone at the end."),
    tender: springSection(f, "The softer one of two, between collar and slider.").exactOptional(),
    crossoverAt: f
      .length("Shock length, eye to eye, at which the slider meets its stop and the main spring goes on alone.", {
        sign: "positive",
        typical: inchRange(14, 30),
        assumed: SPRINGS_ASSUMED.crossoverAt,
      })
      .exactOptional(),
    crossoverGap: f
      .length("The same said in another way: from slider to stop with the shock fully open.", {
        sign: "positive",
        typical: inchRange(2, 6),
      })
      .exactOptional(),
    preload: f
      .length("How far the collar squeezes the springs, both together, with the shock fully open; loose is negative.", {
        typical: inchRange(0.5, 2),
        assumed: SPRINGS_ASSUMED.preload,
      })
      .exactOptional(),
    collarPitch: f
      .length("How far one turn of the collar moves it.", {
        sign: "positive",
        assumed: SPRINGS_ASSUMED.collarPitch,
      })
      .exactOptional(),
  });

export const GAS_KINDS = ["emulsion", "reservoir"] as const;

export const gasSection = (f: Fields) =>
  f.section("Gas in the shock, which pushes its rod out.", {
    kind: f.oneOf(GAS_KINDS, "Gas mixed with the oil in the body, or behind a piston in a reservoir of its own."),
    pressure: f
      .quantity("pressure", "As the gauge reads, shock fully open and cold.", {
        sign: "not-negative",
        typical: pressureRange(150, 250),
        assumed: GAS_ASSUMED.pressure,
      })
      .exactOptional(),
    rodDiameter: f
      .length("Diameter of the shaft.", {
        sign: "positive",
        typical: inchRange(0.625, 1.25),
        assumed: GAS_ASSUMED.rodDiameter,
      })
      .exactOptional(),
    volume: f
      .quantity("volume", "Room that the gas has, shock fully open.", {
        sign: "positive",
        assumed: GAS_ASSUMED.volume,
      })
      .exactOptional(),
  });
