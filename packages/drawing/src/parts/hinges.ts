import { addScaled, lengthOf, type Pivot, placeOn, subtract, type Vec3 } from "@armwright/engine";
import type { Primitive } from "../primitive.ts";
import type { Scene } from "../scene.ts";
import { stroke } from "../sketch.ts";
import { unitOr } from "../space.ts";

/** Runs this far past the bushings, m. */
const PAST = 0.06;

/** Lines that arms turn about, at the chassis and where an arm is hinged to the spindle, as chain lines past the bushings. */
export function hingeLines(scene: Scene): Primitive[] {
  const { corner, position, view } = scene;
  const ends = new Map<string, Vec3[]>();
  for (const pivot of corner.pivots) {
    const key = hingeOf(pivot);
    if (key === null) continue;
    ends.set(key, [...(ends.get(key) ?? []), placeOn(position, pivot.point, pivot.boltSide)]);
  }
  return [...ends].flatMap(([key, points]) => {
    const [a, b] = [points[0]!, points[points.length - 1]!];
    const line = subtract(b, a);
    if (lengthOf(line) < 1e-6) return [];
    const heading = unitOr(line, line);
    const from = view.at(addScaled(a, heading, -PAST));
    const to = view.at(addScaled(b, heading, PAST));
    if (Math.hypot(to.x - from.x, to.y - from.y) < 8 * scene.pen) return [];
    return [stroke("hinge", from, to, { weight: "ghost", dash: "hinge", meaning: key })];
  });
}

const hingeOf = ({ shank, boltSide }: Pivot): string | null =>
  shank.body !== "link" && shank.hinge ? `${shank.body} at ${boltSide}` : null;
