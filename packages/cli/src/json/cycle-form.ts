import { type Cycle, type Quantity, rowAt, type Study } from "@armwright/engine";
import { DIMENSIONS, unitName } from "../units-out.ts";
import { type Field, fieldsOf } from "./declare.ts";

/** A study and the cycle that is shown of it, which may have other travels than the study's own. */
export interface MovedStudy {
  readonly study: Study;
  readonly cycle: Cycle;
}

interface MovedQuantity extends MovedStudy {
  readonly quantity: Quantity;
}

const unit: Field<MovedQuantity> = {
  schema: () => ({ type: "string", description: "Unit of the values; empty for a plain number." }),
  write: ({ quantity: { dimension } }, units) => unitName(dimension, units),
};

const q = fieldsOf<MovedQuantity>();
const quantityForm = q.record("One quantity over the travels.", {
  id: q.text("Names this quantity, also in the CSV.", ({ quantity: { id } }) => id),
  label: q.text("As a builder calls it.", ({ quantity: { label } }) => label),
  dimension: q.word("What kind of number it is.", DIMENSIONS, ({ quantity: { dimension } }) => dimension),
  unit,
  meaning: q.text("What it is, with the meaning of its sign.", ({ quantity: { meaning } }) => meaning),
  basis: q.text("How it is computed.", ({ quantity: { basis } }) => basis),
  values: q.column(
    "One for each travel, in the same order.",
    ({ quantity: { dimension } }) => dimension,
    ({ quantity: { read }, cycle, study }) => Array.from(cycle.travels, (_, i) => read(rowAt(cycle, i), study.corner)),
  ),
});

const travel = fieldsOf<number>().quantity("Wheel travel, bump positive.", "length", (each) => each);

const m = fieldsOf<MovedStudy>();
export const cycleForm: Field<MovedStudy> = m.record(
  "The wheel moved through its travel: a column of values for each quantity.",
  {
    travels: m.list("Wheel travels of the table.", travel, ({ cycle }) => Array.from(cycle.travels)),
    outside: m.list("Travels asked for that the linkage does not reach.", travel, ({ cycle }) => cycle.outside),
    quantities: m.list("Every quantity that this car has.", quantityForm, (moved) =>
      moved.study.quantities.map((quantity) => ({ ...moved, quantity })),
    ),
  },
);
