import { type Car, kindOf, type Linkage, type UnitSystem } from "@armwright/engine";
import type { FieldValue } from "@armwright/engine/document";

/**
 * Entries to begin with: walls and steel of every tube, one bolt, tab and weld for every place. Common practice, no source;
 * ratings of rod ends are their maker's and are left to the builder.
 */
export function startOfStrength({ linkage }: Car, units: UnitSystem): Readonly<Record<string, FieldValue>> {
  const isMetric = units === "metric";
  const tube = (wall: FieldValue): FieldValue => ({ wall, material: "DOM 1020" });
  const tubes = Object.fromEntries(
    kindOf<Linkage>(linkage)
      .members(linkage)
      .map(({ id, body }) =>
        body === "link"
          ? [id, tube(isMetric ? 2.5 : 0.095)]
          : [id.replace(/\.(front|rear|inboard|outboard)$/, ""), tube(isMetric ? 3 : 0.12)],
      ),
  );
  return {
    tubes,
    bolts: { all: { size: isMetric ? "M16x1.5" : "5/8-18", grade: isMetric ? "10.9" : "8", shear: "double" } },
    tabs: {
      all: isMetric
        ? { thickness: 6, width: 50, edgeDistance: 25, height: 40 }
        : { thickness: "1/4", width: 2, edgeDistance: 1, height: "1 1/2" },
    },
    welds: { all: isMetric ? { leg: 5, length: 160 } : { leg: "3/16", length: 6 } },
  };
}

/** A plate under the bump-stop pad, to begin with. */
export const startOfGusset = (at: string, units: UnitSystem): FieldValue =>
  units === "metric"
    ? { at, thickness: 5, depth: 40, reach: 100 }
    : { at, thickness: "3/16", depth: "1 1/2", reach: 4 };
