import { Group } from "three";
import { mountNow, stateOf } from "../frame.ts";
import { Batch } from "../kit/batch.ts";
import { fillMaterial, outlineMaterial, STATE } from "../kit/materials.ts";
import { bar, geometryOf, lathe, run } from "../kit/shape.ts";
import { along, apart, INCH, subtract, unit } from "../kit/space.ts";
import type { Part, Workshop } from "../part.ts";

const FOOT = { radius: 1.25 * INCH, thick: 0.25 * INCH };
const PAD = { radius: 1.2 * INCH, thick: 0.3 * INCH };
const RUBBER = 1 * INCH;

/** Bump stop: foot plate, rubber that shortens once it is touched, and the plate on which it lands. */
export function bumpStopPart({ inks, sides }: Workshop): Part {
  const object = new Group();
  const fill = fillMaterial(inks);
  const outline = outlineMaterial(inks, 1);
  const bars = new Batch(geometryOf(bar(sides)), [fill, outline], 2);
  const rubbers = new Batch(
    geometryOf(
      lathe(
        [
          run([0, 0], [1, 0]),
          run([1, 0], [1, 0.3]),
          run([1, 0.3], [0.84, 0.42], [0.92, 0.62]),
          run([0.92, 0.62], [0.6, 1]),
          run([0.6, 1], [0, 1]),
        ],
        sides,
      ),
    ),
    [fill, outline],
    1,
  );
  object.add(bars.object, rubbers.object);
  return {
    object,
    show(frame) {
      const stop = frame.car.bumpStop;
      bars.begin();
      rubbers.begin();
      if (stop) {
        const base = mountNow(frame, stop.base);
        const strikes = mountNow(frame, stop.strikes);
        const gap = apart(base, strikes);
        const axis = unit(subtract(strikes, base));
        const height = Math.max(stop.solid, Math.min(stop.reach, gap));
        const state = stateOf(frame, "bumpStop") === STATE.held ? STATE.held : STATE.plain;
        // Rubber squeezed shorter grows wider: its volume stays.
        const radius = RUBBER * Math.sqrt(stop.reach / height);
        bars.between(along(base, axis, -FOOT.thick), base, FOOT.radius, state);
        bars.between(strikes, along(strikes, axis, PAD.thick), PAD.radius, state);
        rubbers.along(base, axis, radius, height, state);
      }
      bars.end();
      rubbers.end();
    },
    dispose() {
      bars.dispose();
      rubbers.dispose();
      fill.dispose();
      outline.dispose();
    },
  };
}
