import { POUND_FORCE_PER_INCH } from "../../units/convert.ts";
import { type Assumed, degreeRange, inches, inchRange } from "../assumed.ts";
import type { Fields } from "../fields.ts";
import { WHEEL_ANGLE_LIMIT } from "../limits.ts";

interface Sized {
  readonly freeRadius: number;
  readonly sectionWidth: number;
  readonly rimDiameter: number;
}

export const WHEEL_ASSUMED = {
  camber: { dimension: "angle", from: () => 0, words: "0", because: "none given: the wheel stands upright" },
  toe: { dimension: "angle", from: () => 0, words: "0", because: "none given: the wheel points straight ahead" },
  offset: {
    dimension: "length",
    from: () => 0,
    words: "0",
    because: "neither offset nor backspacing given: the hub face lies in the wheel's centre plane",
  },
  flangeWidth: {
    dimension: "length",
    from: () => inches(0.5),
    words: "1/2 in",
    because: "common practice: a rim is about an inch wider over all than between its bead seats",
  },
  loadedRadius: {
    dimension: "length",
    from: (wheel) => 0.96 * wheel.freeRadius,
    words: "0.96 of the free radius",
    because: "common practice: a loaded tyre stands about 4 % lower; tape yours from floor to hub centre",
  },
  shoulderRadius: {
    dimension: "length",
    from: (wheel) => 0.25 * wheel.sectionWidth,
    words: "a quarter of the section width",
    because: "common practice for a block-tread tyre",
  },
  rimInsideDiameter: {
    dimension: "length",
    from: (wheel) => wheel.rimDiameter - inches(1.5),
    words: "the rim diameter less 1 1/2 in",
    because: "common practice: the barrel lies about 3/4 in inside the bead seat",
  },
} as const satisfies Record<string, Assumed<Sized>>;

export const wheelSection = (f: Fields) =>
  f.section("Wheel and tyre.", {
    hubFace: f.point("Centre of the face that the wheel bolts to; on the spin axis."),
    camber: f
      .angle("Camber at ride height, positive when the top leans out.", {
        limit: WHEEL_ANGLE_LIMIT,
        typical: degreeRange(-2, 1),
        assumed: WHEEL_ASSUMED.camber,
      })
      .exactOptional(),
    toe: f
      .angle("Toe at ride height, this wheel alone, positive toe-in.", {
        limit: WHEEL_ANGLE_LIMIT,
        typical: degreeRange(0, 0.25),
        assumed: WHEEL_ASSUMED.toe,
      })
      .exactOptional(),
    offset: f
      .length("From the wheel's centre plane out to the hub face; negative where the hub face lies inboard of it.", {
        typical: inchRange(-3, 2),
        assumed: WHEEL_ASSUMED.offset,
      })
      .exactOptional(),
    backspacing: f
      .length("Instead of offset: from the rim's inboard edge to the hub face.", {
        sign: "positive",
        typical: inchRange(2, 6),
      })
      .exactOptional(),
    flangeWidth: f
      .length("From a bead seat to the rim's outer edge; used only with backspacing.", {
        sign: "not-negative",
        typical: inchRange(0.4, 0.6),
        assumed: WHEEL_ASSUMED.flangeWidth,
      })
      .exactOptional(),
    freeRadius: f.length("Half the tyre's diameter, off the ground.", { sign: "positive", typical: inchRange(13, 20) }),
    loadedRadius: f
      .length("From the ground to the hub's centre, car at rest.", {
        sign: "positive",
        typical: inchRange(12, 19),
        assumed: WHEEL_ASSUMED.loadedRadius,
      })
      .exactOptional(),
    tyreRate: f
      .quantity("rate", "Upright force for each inch or millimetre that the tyre is squeezed, at its pressure.", {
        sign: "positive",
        typical: { from: 600 * POUND_FORCE_PER_INCH, to: 1600 * POUND_FORCE_PER_INCH },
      })
      .exactOptional(),
    sectionWidth: f.length("The tyre's greatest width, on the rim, with air in.", {
      sign: "positive",
      typical: inchRange(8, 15),
    }),
    rimDiameter: f.length("Bead-seat diameter, as the wheel is sold.", {
      sign: "positive",
      typical: inchRange(13, 20),
    }),
    rimWidth: f.length("Between the bead seats, as the wheel is sold.", {
      sign: "positive",
      typical: inchRange(6, 12),
    }),
    shoulderRadius: f
      .length("How round the tyre's shoulder is; less than half the section width.", {
        sign: "positive",
        typical: inchRange(1, 4),
        assumed: WHEEL_ASSUMED.shoulderRadius,
      })
      .exactOptional(),
    rimInsideDiameter: f
      .length("Inside the rim's barrel, where rod ends have to clear it.", {
        sign: "positive",
        typical: inchRange(11, 18),
        assumed: WHEEL_ASSUMED.rimInsideDiameter,
      })
      .exactOptional(),
  });
