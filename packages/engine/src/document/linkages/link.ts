import { inchRange } from "../assumed.ts";
import type { Fields } from "../fields.ts";
import { TUBE_ASSUMED } from "./form.ts";

export const linkFields = (f: Fields) => ({
  inner: f.point("Pivot at the chassis."),
  outer: f.point("Pivot at the spindle."),
  length: f
    .length(
      "Eye to eye as made, where that is known apart from the two points: the corner is put together at ride height with it. Left out, the distance of the two points.",
      { sign: "positive", typical: inchRange(6, 36) },
    )
    .exactOptional(),
  diameter: f
    .length("Outside diameter of its tube.", {
      sign: "positive",
      typical: inchRange(0.75, 2),
      assumed: TUBE_ASSUMED.link,
    })
    .exactOptional(),
});

export const linkSection = (f: Fields, meaning: string) => f.section(meaning, linkFields(f));
