import { distance, midpoint } from "@armwright/engine";
import { bar, gapOf, headingOf, offset } from "../path.ts";
import type { Primitive } from "../primitive.ts";
import { mountAt, mountPoint, type Scene } from "../scene.ts";
import { area, group, patch } from "../sketch.ts";

const INCH = 0.0254;

/** Stop on its cup, as long as it is now (squeezed where the pad has reached it), and the pad where it lands. */
export function bumpStopParts(scene: Scene): { readonly depth: number; readonly parts: Primitive } | null {
  const stop = scene.car.bumpStop;
  if (!stop) return null;
  const { view, scale } = scene;
  const base = mountPoint(scene, stop.base);
  const pad = mountPoint(scene, stop.strikes);
  const a = mountAt(scene, stop.base);
  const b = mountAt(scene, stop.strikes);
  const h = headingOf(a, b);
  const gap = distance(base, pad);
  const per = gap > 0 ? gapOf(a, b) / gap : 0;
  const length = Math.max(Math.min(stop.reach, gap), stop.solid) * per;
  const squeeze = stop.reach > 0 ? Math.sqrt(Math.min(2, (stop.reach * per) / Math.max(length, 1e-9))) : 1;
  const wide = 1.05 * INCH * scale;
  const parts: Primitive[] = [
    area("bump-stop", bar(offset(a, h, -0.9 * INCH * per, 0), offset(a, h, 0.35 * INCH * per, 0), wide), {
      meaning: "bumpStop",
    }),
    area(
      "bump-stop",
      bar(offset(a, h, 0.35 * INCH * per, 0), offset(a, h, length, 0), wide * 0.8 * squeeze, wide * 0.55 * squeeze),
      {
        hatch: "cut",
        meaning: "bumpStop",
      },
    ),
    patch("bump-stop", bar(offset(b, h, 0, 0), offset(b, h, 0.4 * INCH * per, 0), wide), {
      fill: "ink",
      meaning: "bumpStop.strikes",
    }),
  ];
  return {
    depth: view.depth(midpoint(base, pad)),
    parts: group("bump-stop", parts, { meaning: "bumpStop", label: "bump stop" }),
  };
}
