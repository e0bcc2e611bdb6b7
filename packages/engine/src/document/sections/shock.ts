import { type Assumed, degreeRange, inches, inchRange } from "../assumed.ts";
import type { Fields } from "../fields.ts";
import { JOINT_ANGLE_LIMIT } from "../limits.ts";
import { gasSection, springsSection } from "./springs.ts";
import { holeSpacingField, measuredStopSection, rubberSection, stopGasSection, stretchSection } from "./stop-force.ts";

export const SHOCK_ASSUMED = {
  diameter: {
    dimension: "length",
    from: () => inches(3),
    words: "3 in",
    because: "common practice: outside of a 2 1/2 in spring",
  },
} as const satisfies Record<string, Assumed>;

export const BUMP_STOP_ASSUMED = {
  solid: {
    dimension: "length",
    from: (reach) => 0.4 * reach,
    words: "0.4 of the reach",
    because: "common practice: a foam or rubber stop goes solid at about 40 % of its height",
  },
} as const satisfies Record<string, Assumed<number>>;

export const shockSection = (f: Fields) =>
  f.section("Coilover or shock.", {
    upper: f.chassisMount("Centre of the upper eye."),
    lower: f.mount("Centre of the lower eye."),
    shortest: f.length("Eye to eye, fully closed.", { sign: "positive", typical: inchRange(12, 24) }),
    longest: f.length("Eye to eye, fully open.", { sign: "positive", typical: inchRange(18, 40) }),
    diameter: f
      .length("Widest part that has to clear other things: spring or body.", {
        sign: "positive",
        typical: inchRange(2, 5),
        assumed: SHOCK_ASSUMED.diameter,
      })
      .exactOptional(),
    misalignmentLimit: f
      .angle("Most that either eye may tilt on its bolt, from its maker or with an angle finder.", {
        sign: "positive",
        limit: JOINT_ANGLE_LIMIT,
        typical: degreeRange(5, 34),
      })
      .exactOptional(),
    eyeWidth: f
      .length("Across an eye along its bolt, without spacers.", { sign: "positive", typical: inchRange(0.5, 3) })
      .exactOptional(),
    eyeDiameter: f
      .length("Across the outside of an eye, square to its bolt.", { sign: "positive", typical: inchRange(1, 3) })
      .exactOptional(),
    tabGap: f
      .length("Between the two tabs that hold an eye.", { sign: "positive", typical: inchRange(0.5, 4) })
      .exactOptional(),
    springs: springsSection(f).exactOptional(),
    gas: gasSection(f).exactOptional(),
  });

export const strapSection = (f: Fields) =>
  f.section("Limit strap.", {
    upper: f.chassisMount("Centre of the upper hole."),
    lower: f.mount("Centre of the lower hole."),
    length: f.length("Hole to hole, pulled tight.", { sign: "positive", typical: inchRange(8, 30) }),
    stretch: stretchSection(f).exactOptional(),
    holeSpacing: holeSpacingField(f, "From hole to hole of a tail that can be made up anew."),
  });

export const bumpStopSection = (f: Fields) =>
  f.section("Bump stop.", {
    base: f.chassisMount("Where the stop is bolted: centre of its foot."),
    strikes: f.mount("Where it lands: centre of the strike plate."),
    reach: f.length("From its foot to its free face.", { sign: "positive", typical: inchRange(2, 8) }),
    solid: f
      .length("From its foot to its face when squeezed solid.", {
        sign: "positive",
        typical: inchRange(1, 4),
        assumed: BUMP_STOP_ASSUMED.solid,
      })
      .exactOptional(),
    rubber: rubberSection(f).exactOptional(),
    gas: stopGasSection(f).exactOptional(),
    measured: measuredStopSection(f).exactOptional(),
    holeSpacing: holeSpacingField(f, "From hole to hole of a collar that the stop's foot slides in."),
  });
