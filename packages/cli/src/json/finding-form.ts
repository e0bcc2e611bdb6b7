import {
  type Assumption,
  type Finding,
  type FindingValue,
  sayFinding,
  type UnitSystem,
  type Vec3,
} from "@armwright/engine";
import { DIMENSIONS } from "../units-out.ts";
import { type Field, fieldsOf } from "./declare.ts";

/** A finding, and the units that its sentence is written in. */
export interface ToldFinding {
  readonly finding: Finding;
  readonly units: UnitSystem;
}

interface NamedValue {
  readonly name: string;
  readonly value: FindingValue;
}

const dimensionOf = ({ value }: NamedValue) => (typeof value === "string" ? "word" : value.dimension);

const v = fieldsOf<NamedValue>();
const valueForm = v.record("One figure of a finding.", {
  name: v.text("What the figure is.", ({ name }) => name),
  dimension: v.word("What kind of number it is.", DIMENSIONS, dimensionOf),
  value: v.quantityOf("The figure.", dimensionOf, ({ value }) => (typeof value === "string" ? value : value.value)),
});

const travel = fieldsOf<number>().quantity("Wheel travel that it is about.", "length", (at) => at);
const spot = fieldsOf<Vec3>().point("The spot on the car.", (at) => at);

const f = fieldsOf<ToldFinding>();
export const findingForm: Field<ToldFinding> = f.record("One judgement.", {
  code: f.text("What is judged.", ({ finding }) => finding.code),
  gravity: f.word(
    "must: the car would be hurt or would not work; mind: look again; note: good to know.",
    ["must", "mind", "note"],
    ({ finding }) => finding.gravity,
  ),
  sentence: f.text(
    "What is, in words, in the document's units.",
    ({ finding, units }) => sayFinding(finding, units).sentence,
  ),
  remedy: f.text("What can be done about it.", ({ finding, units }) => sayFinding(finding, units).remedy),
  place: f.text("Place in the car document; empty for the car as a whole.", ({ finding }) => finding.place),
  travel: f.optional(travel, ({ finding }) => finding.travel),
  at: f.optional(spot, ({ finding }) => finding.at),
  source: f.text("What the judgement rests on.", ({ finding }) => finding.source),
  values: f.list("Its figures.", valueForm, ({ finding }) =>
    Object.entries(finding.values).map(([name, value]) => ({ name, value })),
  ),
});

const a = fieldsOf<Assumption>();
export const assumptionForm: Field<Assumption> = a.record("One value that the document left out.", {
  path: a.text("Its place in the car document.", ({ path }) => path),
  dimension: a.word("What kind of value it is.", DIMENSIONS, ({ dimension }) => dimension),
  value: a.quantityOf(
    "What was put in.",
    ({ dimension }) => dimension,
    ({ value }) => value,
  ),
  because: a.text("Where the value comes from.", ({ because }) => because),
});
