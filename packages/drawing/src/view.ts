import type { Vec3 } from "@armwright/engine";
import { spot } from "./path.ts";
import type { Sheet, Spot } from "./primitive.ts";

/** A way of looking at the car, square on; the sheet's origin is where the car's own origin falls. */
export interface View {
  readonly name: "from behind" | "from above" | "from the left";
  readonly sheet: Sheet;
  /** Where a point (m) falls on the sheet. */
  readonly at: (point: Vec3) => Spot;
  /** Away from the eye, m: what is larger is farther and drawn first. */
  readonly depth: (point: Vec3) => number;
  /** Direction away from the eye. */
  readonly away: Vec3;
}

/** What stands in a view's corner. A right corner drawn as a left one is seen as in a mirror, and from its own side. */
export const titleOf = (name: View["name"], isMirrored = false): string =>
  isMirrored ? `right corner ${name === "from the left" ? "from the right" : name}, mirrored` : name;

/** Looking forward: the left wheel on the left of the sheet, up is up. */
export const viewFromBehind = (sheet: Sheet): View => ({
  name: "from behind",
  sheet,
  at: ({ y, z }) => spot(sheet.origin.x - y * sheet.scale, sheet.origin.y - z * sheet.scale),
  depth: ({ x }) => x,
  away: { x: 1, y: 0, z: 0 },
});

/** Looking down: the left wheel on the left, forward is up. */
export const viewFromAbove = (sheet: Sheet): View => ({
  name: "from above",
  sheet,
  at: ({ x, y }) => spot(sheet.origin.x - y * sheet.scale, sheet.origin.y - x * sheet.scale),
  depth: ({ z }) => -z,
  away: { x: 0, y: 0, z: -1 },
});

/** Looking across the car from its left side: forward is to the left, up is up. */
export const viewFromLeft = (sheet: Sheet): View => ({
  name: "from the left",
  sheet,
  at: ({ x, z }) => spot(sheet.origin.x - x * sheet.scale, sheet.origin.y - z * sheet.scale),
  depth: ({ y }) => -y,
  away: { x: 0, y: -1, z: 0 },
});
