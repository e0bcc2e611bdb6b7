import type { CarSurvey } from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { fieldsAt } from "../form/schema-fields.ts";
import { PointSourceField } from "./PointSourceField.tsx";
import { sourceOf } from "./point-source.ts";

/** Sections whose points can come from readings. */
const SECTIONS = ["wheel", "linkage", "driveshaft", "shock", "strap", "bumpStop"] as const;

/** The car's points: which follow from readings, which are typed, and a way to change that for each. */
export function PointSources({ car }: { readonly car: CarSurvey }): ReactNode {
  const document = useBench((state) => state.document);
  if (!document) return null;
  const fields = SECTIONS.flatMap((section) => fieldsAt(section, document)).filter(({ kind }) => kind === "point");
  if (fields.length === 0) return null;
  const surveyed = fields.filter(({ path }) => sourceOf(document, path).surveyed !== null).length;
  return (
    <details className="point-sources">
      <summary className="pressable">
        Points of the car: {surveyed} from readings, {fields.length - surveyed} typed
      </summary>
      {fields.map((field) => (
        <PointSourceField
          key={field.path}
          path={field.path}
          label={field.group === "" ? field.label : `${field.group}, ${field.label.toLowerCase()}`}
          points={car.result.points}
        />
      ))}
    </details>
  );
}
