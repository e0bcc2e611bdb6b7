import { inchRange } from "../assumed.ts";
import type { Fields } from "../fields.ts";

/** How far what is built may be off what is drawn; ± is two standard deviations. */
export const tolerancesSection = (f: Fields) =>
  f.section("How true you build: what ± every result then has.", {
    tacked: f
      .length("How far a pivot or mount may be off after tacking and welding, either way, in each direction.", {
        sign: "positive",
        typical: inchRange(1 / 32, 1 / 8),
        assumed: { words: "1/16 in", because: "common practice: tape and weld pull" },
      })
      .exactOptional(),
    joint: f
      .length("How far the half shaft's joints and the hub may be off, either way: bought parts.", {
        sign: "positive",
        typical: inchRange(1 / 64, 1 / 8),
        assumed: { words: "1/16 in", because: "common practice: tape" },
      })
      .exactOptional(),
    turned: f
      .quantity("turns", "How near an adjuster can be set, turns either way: half a turn is half a thread.", {
        sign: "positive",
        typical: { from: 0.25, to: 1 },
        assumed: { words: "1/2 turn", because: "common practice: half a thread, then the jam nut" },
      })
      .exactOptional(),
  });
