import { CARD_KINDS } from "../../as-built/logged-reading.ts";
import type { Fields } from "../fields.ts";

/** What was read on the tacked or finished car, height by height. */
export const asBuiltSection = (f: Fields) =>
  f.section("What was read on the tacked or finished car, to be held against the plan.", {
    readings: f.list(
      "Cycle log: body on stands at ride height, springs off, hub blocked at each height.",
      f.section("One reading. Without `reads` or `degrees` it is still to be taken.", {
        what: f.oneOf(
          CARD_KINDS,
          "What was read, as on the cycle cards; or a tube's angle; or a point's height off the floor, out from the centreline, or along the car from the mark.",
        ),
        of: f
          .text(
            "Which tube the angle finder was held along, outer end up positive; or which point, e.g. `shock, upper`.",
          )
          .exactOptional(),
        at: f.length("Where the wheel was blocked: travel from ride height, bump positive, droop negative."),
        reads: f.length("What the tape read.").exactOptional(),
        degrees: f.angle("What the angle finder read, for camber and angle.").exactOptional(),
        plusMinus: f
          .length("How sure the tape's reading is, either way.", {
            sign: "positive",
            assumed: { words: "1/16 in; 1/32 in of toe, 1/8 in of half-track", because: "common practice" },
          })
          .exactOptional(),
      }),
    ),
  });
