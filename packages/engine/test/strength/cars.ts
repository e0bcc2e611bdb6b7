import type { Car } from "../../src/car/car.ts";
import { type CarDocument, type FieldValue, setField } from "../../src/document/index.ts";
import { type StrengthStudy, studyStrength } from "../../src/strength/strength-study.ts";
import { study } from "../../src/study/study.ts";
import { carOfDocument, exampleDocument } from "../example-documents.ts";

/** The demo car with fields changed (undefined: taken out). */
export const carWith = (changes: Readonly<Record<string, FieldValue>>): Car =>
  carOfDocument(
    Object.entries(changes).reduce<CarDocument>(
      (document, [path, value]) => setField(document, path, value),
      exampleDocument("saltbush"),
    ),
  );

export function strengthOf(car: Car): StrengthStudy {
  const found = studyStrength(study(car));
  if (!found) throw new Error("the car has no load to judge by");
  return found;
}
