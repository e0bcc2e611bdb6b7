import { type BodyId, type Position, parseQuantity, type Study, type UnitSystem, type Vec3 } from "@armwright/engine";
import { type CarDocument, type Operation, parsePath, valueAt } from "@armwright/engine/document";
import { lengthAsTyped } from "../form/typed.ts";
import type { ViewName } from "../store/bench-state.ts";
import { placeOnSide, type Side } from "../store/sides.ts";
import { stepOf } from "../words/shown.ts";

/** A point of the car in the hand: where it stood when it was taken, and how its body had turned. */
export interface Grip {
  readonly path: string;
  /** In the document, m. */
  readonly start: Vec3;
  /** Rows of the body's rotation from the design position. */
  readonly rotation: readonly number[];
  readonly own: UnitSystem;
  /** −1 for a point of the right side: the corner is drawn as a left one. */
  readonly ySign: 1 | -1;
}

/** The point of the document that a handle stands for; null where the document does not give it. */
export function gripOf(
  cornerPath: string,
  document: CarDocument,
  study: Study,
  position: Position,
  side: Side = "left",
): Grip | null {
  const path = placeOnSide(cornerPath, side, document);
  const ySign = path === cornerPath ? 1 : -1;
  const found = valueAt(document, parsePath(path) ?? []);
  if (typeof found !== "object" || found === null) return null;
  // A surveyed point follows from its readings: there is nothing to take hold of.
  if (valueAt(found, ["surveyed"]) !== undefined) return null;
  const read = (axis: "x" | "y" | "z"): number => {
    const typed: unknown = valueAt(found, [axis]);
    if (typeof typed !== "number" && typeof typed !== "string") return Number.NaN;
    const parsed = parseQuantity(typed, "length", document.units);
    return parsed.ok ? parsed.value : Number.NaN;
  };
  const start = { x: read("x"), y: ySign * read("y"), z: read("z") };
  if (![start.x, start.y, start.z].every(Number.isFinite)) return null;
  const pose = position.poses[bodyOf(cornerPath, study)];
  return { path, start, rotation: pose?.rotation ?? [1, 0, 0, 0, 1, 0, 0, 0, 1], own: document.units, ySign };
}

/** The body that carries a point of the document. */
function bodyOf(path: string, { car, corner }: Study): BodyId {
  const { shock, strap, bumpStop } = car;
  const mounts: Readonly<Record<string, BodyId | undefined>> = {
    "shock.upper": shock?.upper.on,
    "shock.lower": shock?.lower.on,
    "strap.upper": strap?.upper.on,
    "strap.lower": strap?.lower.on,
    "bumpStop.base": bumpStop?.base.on,
    "bumpStop.strikes": bumpStop?.strikes.on,
    "driveshaft.outer.centre": "spindle",
    "wheel.hubFace": "spindle",
    "linkage.trailingArm.hub": "trailing-arm",
  };
  const mounted = mounts[path];
  if (mounted) return mounted;
  if (!path.startsWith("linkage.")) return "chassis";
  const pivot = corner.pivots.find(({ id }) => `linkage.${id}` === path);
  return pivot?.boltSide ?? (path.endsWith(".outer") ? "spindle" : "chassis");
}

/** What a way on the sheet (m, right and down) is on the car, in a view's plane. */
export function inCar(view: ViewName, right: number, down: number): Vec3 {
  if (view === "rear") return { x: 0, y: -right, z: -down };
  if (view === "top") return { x: -down, y: -right, z: 0 };
  return { x: -right, y: 0, z: -down };
}

/** Only the longer of the two ways counts. */
export const locked = (right: number, down: number): readonly [number, number] =>
  Math.abs(right) >= Math.abs(down) ? [right, 0] : [0, down];

/** The edits that move a point by a way on the car, as it stands now; each coordinate on the snap step. */
export function moveBy(grip: Grip, way: Vec3, units: UnitSystem): readonly Operation[] {
  const r = grip.rotation;
  const at = (index: number): number => r[index] ?? 0;
  // Back to the design position: the transpose of the body's rotation.
  const own = {
    x: at(0) * way.x + at(3) * way.y + at(6) * way.z,
    y: at(1) * way.x + at(4) * way.y + at(7) * way.z,
    z: at(2) * way.x + at(5) * way.y + at(8) * way.z,
  };
  const step = stepOf(units);
  return (["x", "y", "z"] as const).flatMap((axis) => {
    if (Math.abs(own[axis]) < step / 4) return [];
    const snapped = Math.round((grip.start[axis] + own[axis]) / step) * step;
    return Math.abs(snapped - grip.start[axis]) < step / 4
      ? []
      : [
          {
            path: `${grip.path}.${axis}`,
            value: lengthAsTyped(axis === "y" ? grip.ySign * snapped : snapped, units, grip.own),
          },
        ];
  });
}
