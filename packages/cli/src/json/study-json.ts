import { type Study, studySprings } from "@armwright/engine";
import { axleRows } from "../axle-rows.ts";
import { DIMENSIONS, type OutUnits, unitName } from "../units-out.ts";
import { adjusterForm } from "./adjuster-form.ts";
import { axleForm } from "./axle-form.ts";
import { certaintyForm } from "./certainty-form.ts";
import { cycleForm, type MovedStudy } from "./cycle-form.ts";
import { type Field, fieldsOf, type Json, type JsonObject } from "./declare.ts";
import { assumptionForm, findingForm } from "./finding-form.ts";
import { springsForm } from "./springs-form.ts";
import { rangeForm, travelForm } from "./travel-form.ts";

/** Version of the form below. Raised whenever a field is taken away or changes its meaning; a new field does not raise it. */
export const STUDY_FORM_VERSION = 1;

export interface WholeStudy extends MovedStudy {
  /** The right wheel's own, where the document gives that side its own. */
  readonly right: MovedStudy | null;
}

const unitNames: Field<WholeStudy> = {
  schema: () => ({
    type: "object",
    description: "The unit of each dimension; empty for plain numbers. A percent is a fraction in SI.",
    properties: Object.fromEntries(DIMENSIONS.map((dimension) => [dimension, { type: "string" }])),
    required: DIMENSIONS,
    additionalProperties: false,
  }),
  write: (_, units) => Object.fromEntries(DIMENSIONS.map((dimension) => [dimension, unitName(dimension, units)])),
};

const s = fieldsOf<Study>();
const carForm = s.record("Which car.", {
  name: s.text("What it is called.", ({ car }) => car.name),
  kind: s.word(
    "Kind of its linkage.",
    ["h-arm", "double-a-arm", "trailing-arm", "five-link"],
    ({ car }) => car.linkage.kind,
  ),
  datum: s.text("What x = 0 is on the real car.", ({ car }) => car.datum),
});
const travel = s.part(travelForm, (study) => study.travel);
const findings = s.list("Every judgement, worst first.", findingForm, (study) =>
  study.findings.map((finding) => ({ finding, units: study.car.units })),
);
const m = fieldsOf<MovedStudy>();
const rightForm = m.record(
  "The right wheel, where the document gives it its own; mirrored, so that it reads as a left one.",
  {
    travel: m.part(travel, ({ study }) => study),
    range: m.part(rangeForm, ({ study }) => study.range),
    findings: m.part(findings, ({ study }) => study),
    cycle: m.part(cycleForm, (whole) => whole),
    certainty: m.part(certaintyForm, ({ study }) => study),
    adjusters: m.list("What a turn of each adjuster does.", adjusterForm, ({ study }) => study.adjusters),
    assumed: m.list("Values put in for what the document left out.", assumptionForm, ({ study }) => study.car.assumed),
  },
);

const w = fieldsOf<WholeStudy>();
const studyForm = w.record("All that is known of a car, as `armwright study CAR --json` writes it.", {
  armwrightStudy: w.version("Version of this form.", STUDY_FORM_VERSION),
  units: w.word("Units of every number in this file.", ["inch-pound", "metric", "SI"], (_, units) => units),
  unitNames,
  car: w.part(carForm, ({ study }) => study),
  travel: w.part(travel, ({ study }) => study),
  range: w.part(rangeForm, ({ study }) => study.range),
  findings: w.part(findings, ({ study }) => study),
  cycle: w.part(cycleForm, (whole) => whole),
  certainty: w.part(certaintyForm, ({ study }) => study),
  axle: w.list("Both wheels: together, in roll, one alone.", axleForm, ({ study, right }) =>
    axleRows(study, right?.study ?? null),
  ),
  adjusters: w.list("What a turn of each adjuster does.", adjusterForm, ({ study }) => study.adjusters),
  assumed: w.list("Values put in for what the document left out.", assumptionForm, ({ study }) => study.car.assumed),
  springs: w.optional(springsForm, ({ study }) => studySprings(study)),
  right: w.optional(rightForm, ({ right }) => right),
});

/** The study as the text of a JSON file. */
export const studyJson = (whole: WholeStudy, units: OutUnits): string =>
  `${JSON.stringify(studyValue(whole, units), null, 2)}\n`;

export const studyValue = (whole: WholeStudy, units: OutUnits): Json => studyForm.write(whole, units) ?? null;

/** JSON Schema (draft 2020-12) of what `studyJson` writes. */
export const studySchema = (): JsonObject => ({
  $schema: "https://json-schema.org/draft/2020-12/schema",
  title: `Armwright study, version ${STUDY_FORM_VERSION}`,
  ...studyForm.schema(),
});
