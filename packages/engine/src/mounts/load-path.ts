import type { KeepOutTube } from "../car/car.ts";
import { segmentToPoint } from "../clearance/core-distance.ts";
import type { Corner } from "../cycle/corner.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import type { MountRequest } from "./request.ts";

/** How far the load of the upper mount has to go to a tube of the frame. */
export interface LoadPath {
  readonly tube: string;
  /** From the eye's middle to the tube's skin, m; 0 inside it. */
  readonly length: number;
}

/**
 * Tubes that may carry the upper mount: those named in the request; else those that the car marks as its frame, with the one
 * along which the mount may sit. Empty where none is known.
 */
export function frameTubes(
  corner: Corner,
  { frame, upper }: Pick<MountRequest, "frame" | "upper">,
): readonly KeepOutTube[] {
  const along = upper.kind === "tube" ? upper.keepOut : null;
  return corner.car.keepOuts.filter(
    (each): each is KeepOutTube =>
      each.shape === "tube" && (frame ? frame.includes(each.name) : each.isFrame === true || each.name === along),
  );
}

/** To the nearest of the tubes; null where there is none. */
export function loadPathOf(tubes: readonly KeepOutTube[], upper: Vec3): LoadPath | null {
  let best: LoadPath | null = null;
  for (const { name, from, to, diameter } of tubes) {
    const apart = segmentToPoint(from.x, from.y, from.z, to.x, to.y, to.z, upper.x, upper.y, upper.z);
    const length = Math.max(0, apart - diameter / 2);
    if (!best || length < best.length) best = { tube: name, length };
  }
  return best;
}
