import type { BodyId } from "../car/car.ts";
import type { Corner } from "../cycle/corner.ts";
import { cross, distance, dot, subtract, unit, type Vec3 } from "../geometry/vec3.ts";

/** What a tape reads from the middle of a pivot's bolt to the middle of the eye's bolt, m. */
export interface TapeTo {
  readonly pivot: string;
  readonly label: string;
  readonly distance: number;
}

/** From the datum in the design position, m: forward, out from the centreline, up from the ground. */
export interface Reading {
  readonly forward: number;
  readonly out: number;
  readonly up: number;
}

export const readingOf = ({ x, y, z }: Vec3): Reading => ({ forward: x, out: y, up: z });

/**
 * To as many as three pivots that sit on the same body as the mount, so that the readings hold wherever the wheel is: those
 * three whose directions stand most apart, by the volume of their unit vectors; where all lie in one plane the first three.
 */
export function tapeTo({ pivots }: Corner, point: Vec3, on: BodyId): readonly TapeTo[] {
  const own = pivots
    .filter(({ boltSide, shank }) => boltSide === on || shank.body === on)
    .map(({ id, label, point: at }) => ({ pivot: id, label, distance: distance(point, at), at }))
    .filter((each) => each.distance > 0);
  let best = [0, 1, 2];
  let widest = 0;
  for (let i = 0; i < own.length; i += 1)
    for (let j = i + 1; j < own.length; j += 1)
      for (let k = j + 1; k < own.length; k += 1) {
        const [a, b, c] = [i, j, k].map((n) => unit(subtract(own[n]!.at, point)));
        const volume = Math.abs(dot(cross(a!, b!), c!));
        if (volume <= widest) continue;
        widest = volume;
        best = [i, j, k];
      }
  return best
    .flatMap((n) => own[n] ?? [])
    .map(({ pivot, label, distance: reads }) => ({ pivot, label, distance: reads }));
}
