import { USUAL_RATIOS } from "../../springs/damping.ts";
import type { Assumed } from "../assumed.ts";
import type { Fields } from "../fields.ts";

export const DAMPER_ASSUMED = {
  bumpRatio: {
    dimension: "ratio",
    from: () => USUAL_RATIOS.bump,
    words: String(USUAL_RATIOS.bump),
    because: "common practice: 0.2 to 0.4",
  },
  reboundRatio: {
    dimension: "ratio",
    from: () => USUAL_RATIOS.rebound,
    words: String(USUAL_RATIOS.rebound),
    because: "common practice: 0.4 to 0.7",
  },
} as const satisfies Record<string, Assumed>;

const curveSection = (f: Fields, way: string) =>
  f.list(
    `Force over shaft speed ${way}, slowest first; before the first point in proportion, past the last on as between the last two.`,
    f.section("One point of the curve.", {
      speed: f.quantity("speed", "Of the shaft (in/s, or m/s in metric).", { sign: "positive" }),
      force: f.quantity("force", "Of the damper alone.", { sign: "not-negative" }),
    }),
  );

/** How the shock damps: a curve as measured, or shares of critical to aim at. */
export const damperSection = (f: Fields) =>
  f.section("How the shock damps, for landings: a curve as measured, or shares of critical at ride height.", {
    bump: curveSection(f, "going in").exactOptional(),
    rebound: curveSection(f, "coming out").exactOptional(),
    bumpRatio: f
      .quantity("ratio", "Share of critical going in, where no curve is given.", {
        sign: "not-negative",
        typical: { from: 0.2, to: 0.4 },
        assumed: DAMPER_ASSUMED.bumpRatio,
      })
      .exactOptional(),
    reboundRatio: f
      .quantity("ratio", "Share of critical coming out, where no curve is given.", {
        sign: "not-negative",
        typical: { from: 0.4, to: 0.7 },
        assumed: DAMPER_ASSUMED.reboundRatio,
      })
      .exactOptional(),
  });
