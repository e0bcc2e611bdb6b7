import { shift, spot } from "../path.ts";
import type { Primitive, Spot } from "../primitive.ts";
import { groundHeight, type Scene } from "../scene.ts";
import { stroke } from "../sketch.ts";

const INCH = 0.0254;

/** Ground under the tyre where the wheel is now, with short strokes below. */
export function groundParts(scene: Scene, fromX: number, toX: number): Primitive[] {
  const { pen, view } = scene;
  const y = view.at({ x: 0, y: 0, z: groundHeight(scene) }).y;
  return surface("ground", spot(fromX, y), spot(toX, y), pen, scene.detail === "full" ? 1 : 0.45);
}

/** A heavy line with strokes on the side away from the air: `pitch` px apart, slanting down to the left. */
function surface(layer: string, from: Spot, to: Spot, pen: number, size: number): Primitive[] {
  const pitch = 14.3 * pen * size;
  const reach = 8.8 * pen * size;
  const count = Math.max(0, Math.floor((to.x - from.x - reach) / pitch));
  return [
    stroke(layer, from, to, { weight: "outline" }),
    ...Array.from({ length: count + 1 }, (_, i) => {
      const top = shift(from, reach + i * pitch, 0);
      return stroke(layer, top, shift(top, -reach, reach), { weight: "hair", ink: "ink-2" });
    }),
  ];
}

/** The underbody's low points: a short heavy line each, strokes above it. */
export function underbodyParts(scene: Scene): Primitive[] {
  const { view, scale, pen, car } = scene;
  const reach = 2.5 * INCH * scale;
  return car.underbody.flatMap(({ point, name }) => {
    const c = view.at(point);
    return [
      stroke("underbody", shift(c, -reach, 0), shift(c, reach, 0), { weight: "outline", meaning: name }),
      ...[-0.7, -0.2, 0.3, 0.8].map((share) => {
        const foot = shift(c, share * reach, 0);
        return stroke("underbody", foot, shift(foot, 6 * pen, -6 * pen), { weight: "hair", ink: "ink-2" });
      }),
    ];
  });
}
