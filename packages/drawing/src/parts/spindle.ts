import { addScaled, placeOn } from "@armwright/engine";
import { bar, hull, polyline, ring } from "../path.ts";
import type { Primitive } from "../primitive.ts";
import type { Scene } from "../scene.ts";
import { area, group } from "../sketch.ts";

const INCH = 0.0254;

/** The plate from the bearing carrier to the outer pivots; the car says where those are, the outline is a usual one. */
export function spindlePlate(scene: Scene): { readonly depth: number; readonly parts: Primitive } {
  const { corner, position, view, scale } = scene;
  const { hub, carrier } = axleSpots(scene);
  const pivots = corner.pivots
    .filter(({ boltSide }) => boltSide === "spindle")
    .map(({ point }) => placeOn(position, point, "spindle"));
  const outline = hull([
    ...ring(view.at(hub), 1.9 * INCH * scale),
    ...ring(view.at(carrier), 1.9 * INCH * scale),
    ...pivots.flatMap((point) => ring(view.at(point), 1.05 * INCH * scale)),
  ]);
  return {
    depth: view.depth(position.wheelCentre),
    parts: group("spindle", [area("spindle", polyline(outline, true), { meaning: "spindle" })], {
      meaning: "spindle",
      label: "spindle",
    }),
  };
}

/** Hub flange on its face, nose through the wheel, and the stub axle in to the shaft's outer joint. */
export function hubParts(scene: Scene): Primitive[] {
  const { position, view, scale, car } = scene;
  const { offset } = car.wheel;
  const at = (a: number) => view.at(addScaled(position.wheelCentre, position.spinAxis, a));
  const joint = car.driveshaft && placeOn(position, car.driveshaft.outer.centre, "spindle");
  const inner = joint ? view.at(joint) : at(offset - 2.6 * INCH);
  return [
    area("spindle", bar(at(offset - 0.6 * INCH), inner, 0.95 * INCH * scale), { meaning: "spindle" }),
    area("spindle", bar(at(offset + 1.5 * INCH), at(offset), 1.3 * INCH * scale), { meaning: "spindle" }),
    area("spindle", bar(at(offset), at(offset - 0.6 * INCH), 2.9 * INCH * scale), { meaning: "wheel.hubFace" }),
  ];
}

/** Two places on the spin axis between which the carrier lies. */
function axleSpots({ position, car }: Scene) {
  const on = (a: number) => addScaled(position.wheelCentre, position.spinAxis, a);
  return { hub: on(car.wheel.offset - 1.2 * INCH), carrier: on(car.wheel.offset - 2.4 * INCH) };
}
