import { z } from "zod";
import type { UnitSystem } from "../car/car.ts";
import { type Fields, fieldFacts, fieldsFor } from "./fields.ts";
import { linkageSection } from "./linkages/kinds.ts";
import { asBuiltSection } from "./sections/as-built.ts";
import { stopsSection, targetsSection, underbodySection, weightsSection } from "./sections/chassis.ts";
import { chassisMeshSection } from "./sections/chassis-mesh.ts";
import { damperSection } from "./sections/damper.ts";
import { driveshaftSection } from "./sections/driveshaft.ts";
import { keepOutSection } from "./sections/keep-outs.ts";
import { loadsSection } from "./sections/loads.ts";
import { rodEndsSection } from "./sections/rod-ends.ts";
import { bumpStopSection, shockSection, strapSection } from "./sections/shock.ts";
import { strengthSection } from "./sections/strength.ts";
import { surveySection } from "./sections/survey.ts";
import { tolerancesSection } from "./sections/tolerances.ts";
import { wheelSection } from "./sections/wheel.ts";

/** Version of the form that this program writes. */
export const FORMAT_VERSION = 1 as const;

export const UNIT_SYSTEMS = ["inch-pound", "metric"] as const satisfies readonly UnitSystem[];

/**
 * The declaration of a car document: from it come the types, the checks of single fields, the published
 * JSON Schema and the reference. Made once for each unit system, since a bare number means another length in each.
 */
export function carSchema(system: UnitSystem): ReturnType<typeof makeSchema> {
  const made = schemas.get(system);
  if (made) return made;
  const schema = makeSchema(system);
  schemas.set(system, schema);
  return schema;
}

const schemas = new Map<UnitSystem, ReturnType<typeof makeSchema>>();

function makeSchema(system: UnitSystem) {
  const f = fieldsFor(system);
  return f.section("A car, one to a file.", {
    $schema: z
      .string({ error: () => "text" })
      .register(fieldFacts, { meaning: "Where an editor finds the JSON Schema." })
      .exactOptional(),
    armwright: z
      .literal(FORMAT_VERSION, { error: () => String(FORMAT_VERSION) })
      .register(fieldFacts, { meaning: "Version of this form." }),
    name: f.text("What the car is called."),
    version: f.text("Your own mark for this state of the design, e.g. B; printed on every sheet.").exactOptional(),
    units: f.oneOf(UNIT_SYSTEMS, "Unit of bare numbers: inches and pounds, or millimetres and kilograms."),
    datum: f.text("The mark on the car that x is measured from, in words."),
    wheel: wheelSection(f),
    linkage: linkageSection(f),
    rodEnds: rodEndsSection(f).exactOptional(),
    driveshaft: driveshaftSection(f).exactOptional(),
    shock: shockSection(f).exactOptional(),
    strap: strapSection(f).exactOptional(),
    bumpStop: bumpStopSection(f).exactOptional(),
    underbody: underbodySection(f).exactOptional(),
    keepOuts: f
      .list(
        "Things that wheel, arms, links, shaft and shock must stay clear of. Each stands on the right too, mirrored, unless its middle lies right of the centreline: then it stands only there.",
        keepOutSection(f),
      )
      .exactOptional(),
    chassisMesh: chassisMeshSection(f).exactOptional(),
    weights: weightsSection(f).exactOptional(),
    targets: targetsSection(f).exactOptional(),
    stops: stopsSection(f, system).exactOptional(),
    strength: strengthSection(f).exactOptional(),
    damper: damperSection(f).exactOptional(),
    loads: loadsSection(f, system).exactOptional(),
    survey: surveySection(f).exactOptional(),
    tolerances: tolerancesSection(f).exactOptional(),
    asBuilt: asBuiltSection(f).exactOptional(),
    right: rightSection(f).exactOptional(),
  });
}

const rightSection = (f: Fields) =>
  f.section(
    "Sections in which the right side is not the left one's mirror image, with real coordinates (y negative).",
    {
      wheel: wheelSection(f).exactOptional(),
      linkage: linkageSection(f).exactOptional(),
      rodEnds: rodEndsSection(f).exactOptional(),
      driveshaft: driveshaftSection(f).exactOptional(),
      shock: shockSection(f).exactOptional(),
      strap: strapSection(f).exactOptional(),
      bumpStop: bumpStopSection(f).exactOptional(),
    },
  );

type DeepReadonly<T> = T extends object ? { readonly [K in keyof T]: DeepReadonly<T[K]> } : T;

/** A car as written down: every value as typed, a number in the document's unit or text as a tape is read. */
export type CarDocument = DeepReadonly<z.infer<ReturnType<typeof makeSchema>>>;

/** A length, angle or weight as typed. */
export type Typed = number | string;
export type PointDocument = CarDocument["wheel"]["hubFace"];
export type LinkageDocument = CarDocument["linkage"];
export type WheelDocument = CarDocument["wheel"];
export type RodEndsDocument = NonNullable<CarDocument["rodEnds"]>;
export type RodEndDocument = RodEndsDocument[string];
export type DriveshaftDocument = NonNullable<CarDocument["driveshaft"]>;
export type ShockDocument = NonNullable<CarDocument["shock"]>;
export type SpringsDocument = NonNullable<ShockDocument["springs"]>;
export type GasDocument = NonNullable<ShockDocument["gas"]>;
export type StrapDocument = NonNullable<CarDocument["strap"]>;
export type BumpStopDocument = NonNullable<CarDocument["bumpStop"]>;
export type KeepOutDocument = NonNullable<CarDocument["keepOuts"]>[number];
export type ChassisMeshDocument = NonNullable<CarDocument["chassisMesh"]>;
export type StrengthDocument = NonNullable<CarDocument["strength"]>;
export type DamperDocument = NonNullable<CarDocument["damper"]>;
export type LoadsDocument = NonNullable<CarDocument["loads"]>;
export type SurveyDocument = NonNullable<CarDocument["survey"]>;
export type RightDocument = NonNullable<CarDocument["right"]>;
