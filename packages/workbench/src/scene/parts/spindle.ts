import { Group } from "three";
import { mountNow } from "../frame.ts";
import { Batch } from "../kit/batch.ts";
import { fillMaterial, outlineMaterial } from "../kit/materials.ts";
import { bar, geometryOf } from "../kit/shape.ts";
import { along, apart, INCH, subtract, unit } from "../kit/space.ts";
import type { Part, Workshop } from "../part.ts";

/** Hub and bearing carrier are a usual one's, in along the spin axis from the hub face; the car gives that face alone. */
const FLANGE = { radius: 2.9 * INCH, inward: 0.6 * INCH };
const NOSE = { radius: 1.3 * INCH, outward: 1.5 * INCH };
const CARRIER = { radius: 2 * INCH, from: -2.7 * INCH, to: -0.8 * INCH };
const STUB = 0.8 * INCH;
const ARM = 0.62 * INCH;

/** Hub, bearing carrier, stub axle, and an arm from the carrier to each outer pivot. */
export function spindlePart({ inks, sides }: Workshop): Part {
  const object = new Group();
  const fill = fillMaterial(inks);
  const outline = outlineMaterial(inks, 1);
  const bars = new Batch(geometryOf(bar(sides + 8)), [fill, outline]);
  object.add(bars.object);
  return {
    object,
    show(frame) {
      const { position, car, corner, shaft } = frame;
      const { offset } = car.wheel;
      const at = (a: number) => along(position.wheelCentre, position.spinAxis, offset + a);
      bars.begin();
      bars.between(at(-FLANGE.inward), at(0), FLANGE.radius);
      bars.between(at(0), at(NOSE.outward), NOSE.radius);
      bars.between(at(CARRIER.from), at(CARRIER.to), CARRIER.radius);
      bars.between(at(CARRIER.to), at(-FLANGE.inward), NOSE.radius);
      if (shaft) {
        const yoke = along(shaft.outer, position.spinAxis, (car.driveshaft?.diameter ?? 0) * 1.1);
        const reach = subtract(at(CARRIER.from), yoke);
        const outward = reach.x * position.spinAxis.x + reach.y * position.spinAxis.y + reach.z * position.spinAxis.z;
        if (outward > 0) bars.between(yoke, at(CARRIER.from), STUB);
      }
      for (const { boltSide, point, id } of corner.pivots) {
        if (boltSide !== "spindle") continue;
        const pivot = mountNow(frame, { point, on: "spindle" });
        const root = at((CARRIER.from + CARRIER.to) / 2);
        const head = car.rodEnds.find((end) => end.pivot === id)?.headRadius ?? INCH;
        const size = apart(root, pivot);
        if (size > head * 1.2) bars.between(root, along(pivot, unit(subtract(root, pivot)), head * 1.15), ARM);
      }
      bars.end();
    },
    dispose() {
      bars.dispose();
      fill.dispose();
      outline.dispose();
    },
  };
}
