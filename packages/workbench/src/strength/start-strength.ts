import { type Car, kindOf, type Linkage, type UnitSystem } from "@armwright/engine";
import type { FieldValue } from "@armwright/engine/document";

/** One part as it is begun, inches or millimetres: common practice, no source. */
type Start = Readonly<Record<UnitSystem, FieldValue>>;

/** Bolts, tabs, welds, shaft and stub axle: they cannot do without numbers. */
export const PART_STARTS = {
  bolts: {
    "inch-pound": { size: "5/8-18", grade: "8", shear: "double" },
    metric: { size: "M16x1.5", grade: "10.9", shear: "double" },
  },
  tabs: {
    "inch-pound": { thickness: "1/4", width: 2, edgeDistance: 1, height: "1 1/2" },
    metric: { thickness: 6, width: 50, edgeDistance: 25, height: 40 },
  },
  welds: {
    "inch-pound": { leg: "3/16", length: 6 },
    metric: { leg: 5, length: 160 },
  },
  shaft: {
    "inch-pound": { diameter: "1 1/8", material: "4130 N" },
    metric: { diameter: 28, material: "4130 N" },
  },
  stub: {
    "inch-pound": { diameter: "1 3/4", material: "4130 N", toBearing: 2 },
    metric: { diameter: 45, material: "4130 N", toBearing: 50 },
  },
} as const satisfies Readonly<Record<string, Start>>;

/** A second tube under the mounts. */
export const SECOND_TUBE_START: Start = {
  "inch-pound": { diameter: 1, wall: 0.12, drop: 3 },
  metric: { diameter: 25, wall: 3, drop: 80 },
};

/** A steel of the builder's own, psi or MPa: the usual tube's strength, to be written over by its certificate. */
export const MATERIAL_START: Start = {
  "inch-pound": { name: "my steel", yield: 50_000, ultimate: 65_000 },
  metric: { name: "my steel", yield: 350, ultimate: 450 },
};

/** A plate under the bump-stop pad or a mount. */
export const startOfGusset = (at: string, units: UnitSystem): FieldValue =>
  units === "metric"
    ? { at, thickness: 5, depth: 40, reach: 100 }
    : { at, thickness: "3/16", depth: "1 1/2", reach: 4 };

const WALLS = { arm: { "inch-pound": 0.12, metric: 3 }, link: { "inch-pound": 0.095, metric: 2.5 } } as const;

/**
 * Entries to begin with: walls and steel of every tube, one bolt, tab and weld for every place. Ratings of rod ends are
 * their maker's and are left to the builder.
 */
export function startOfStrength({ linkage }: Car, units: UnitSystem): Readonly<Record<string, FieldValue>> {
  const tubes = Object.fromEntries(
    kindOf<Linkage>(linkage)
      .members(linkage)
      .map(({ id, body }) => {
        const isLink = body === "link";
        return [isLink ? id : armEntry(id), { wall: WALLS[isLink ? "link" : "arm"][units], material: "DOM 1020" }];
      }),
  );
  const { bolts, tabs, welds } = PART_STARTS;
  return { tubes, bolts: { all: bolts[units] }, tabs: { all: tabs[units] }, welds: { all: welds[units] } };
}

/** The arm that a tube of it belongs to, as a document names it: `lowerArm` of `lowerArm.front`. */
export const armEntry = (member: string): string => member.replace(/\.[^.]*$/, "");
