import { inchRange } from "../assumed.ts";
import type { Fields } from "../fields.ts";
import { TUBE_ASSUMED } from "./form.ts";

export const linkFields = (f: Fields) => ({
  inner: f.point("Pivot at the chassis."),
  outer: f.point("Pivot at the spindle."),
  diameter: f
    .length("Outside diameter of its tube.", {
      sign: "positive",
      typical: inchRange(0.75, 2),
      assumed: TUBE_ASSUMED.link,
    })
    .exactOptional(),
});

export const linkSection = (f: Fields, meaning: string) => f.section(meaning, linkFields(f));
