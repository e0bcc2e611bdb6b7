import {
  type CertainReading,
  type LimitCertainty,
  type Matter,
  type Share,
  type Study,
  sayInput,
  sayMatter,
} from "@armwright/engine";
import { DIMENSIONS } from "../units-out.ts";
import { type Field, fieldsOf } from "./declare.ts";

const c = fieldsOf<Share>();
const cause = c.record("One thing that may be off.", {
  what: c.text("In words.", ({ input }) => sayInput(input)),
  path: c.text("Place in the car document.", ({ input }) =>
    input.kind === "point" ? `${input.place.path}.${input.axis}` : `wheel.${input.setting}`,
  ),
  share: c.quantity("Its share of the variance, 0 to 1.", "ratio", ({ share }) => share),
});

const dimensionOf = ({ quantity: { dimension } }: CertainReading) => dimension;
const r = fieldsOf<CertainReading>();
const reading = r.record("One quantity at one travel.", {
  id: r.text("Which quantity.", ({ quantity }) => quantity.id),
  travel: r.quantity("Wheel travel, bump positive.", "length", ({ travel }) => travel),
  dimension: r.word("What kind of number it is.", DIMENSIONS, dimensionOf),
  // A column of one holds a number that may not be there.
  value: r.column("The plan's value.", dimensionOf, ({ value }) => [value]),
  plusMinus: r.column("Two standard deviations, or what holds about 95 in 100 cars.", dimensionOf, ({ sd }) => [
    sd === null ? null : 2 * sd,
  ]),
  between: r.column("About 95 in 100 cars lie between these two.", dimensionOf, ({ low, high }) => [low, high]),
  isSimulated: r.flag("It bends too much for the straight law: cars were simulated.", ({ isSimulated }) => isSimulated),
  causes: r.list("What brings most of it.", cause, ({ causes }) => causes),
});

const l = fieldsOf<LimitCertainty>();
const limit = l.record("How sure it is that the stop comes before one hard limit.", {
  id: l.text("Which limit.", (each) => each.limit.id),
  direction: l.word("Which way.", ["bump", "droop"], ({ direction }) => direction),
  left: l.quantity("Travel from the stop to the limit.", "length", ({ left }) => left),
  plusMinus: l.quantity("Two standard deviations of it.", "length", ({ sd }) => 2 * sd),
  chance: l.quantity(
    "Of cars built so, those in which the limit comes first, 0 to 1.",
    "ratio",
    ({ chance }) => chance,
  ),
  causes: l.list("What brings most of it.", cause, ({ causes }) => causes),
});

interface MatterOfCar {
  readonly matter: Matter;
  readonly study: Study;
}
const m = fieldsOf<MatterOfCar>();
const matter = m.record("A weld, a part, a setting or a reading to be careful with.", {
  what: m.text("In words.", (each) => sayMatter(each.matter.source, each.study.car.survey)),
  weight: m.quantity("Its share of what is unsure in all main results, 0 to 1.", "ratio", (each) => each.matter.weight),
});

const s = fieldsOf<Study>();
/** How sure the study is. */
export const certaintyForm: Field<Study> = s.record("How sure the study is.", {
  isGiven: s.flag(
    "Tolerances, a survey or points' own ± are in the document; otherwise common practice stands for them.",
    ({ certainty }) => certainty.inputs.isGiven,
  ),
  readings: s.list("Every quantity at droop, ride and bump.", reading, ({ certainty }) => certainty.cycle.readings),
  limits: s.list("Hard limits near the stops.", limit, ({ certainty }) => certainty.limits),
  matters: s.list("What to be careful with, the most telling first.", matter, (study) =>
    study.certainty.matters.map((each) => ({ matter: each, study })),
  ),
});
