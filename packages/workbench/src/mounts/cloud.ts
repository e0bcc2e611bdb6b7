import type { BodyId, LowerPoint, Region, Vec3 } from "@armwright/engine";

/** Places of one mount for which the other has at least one: how many decides the size of the dot. */
export interface Cloud {
  readonly points: readonly Vec3[];
  /** Of each place, against the place with most, above 0…1. */
  readonly shares: readonly number[];
  /** Body that carries each; the chassis where it is left out. */
  readonly on?: readonly BodyId[];
}

export interface Clouds {
  readonly upper: Cloud;
  readonly lower: Cloud;
}

/** The feasible region as places of either mount. */
export function cloudsOf({ upper, lower }: Region, lowerPoints: readonly LowerPoint[]): Clouds {
  return {
    upper: { points: upper.points, shares: sharesOf(upper.counts) },
    lower: {
      points: lower.points,
      shares: sharesOf(lower.counts),
      on: Array.from(lower.places, (place) => lowerPoints[place]?.on ?? "spindle"),
    },
  };
}

function sharesOf(counts: Uint32Array): readonly number[] {
  let most = 0;
  for (const count of counts) most = Math.max(most, count);
  return Array.from(counts, (count) => count / most);
}

/** A cloud of no more than one place a cube of this edge (m), so that it can be looked into; it stands for all in its cube. */
export function thinned({ points, shares, on }: Cloud, edge: number): Cloud {
  const cubes = new Map<string, { index: number; share: number }>();
  points.forEach(({ x, y, z }, index) => {
    const key = `${Math.floor(x / edge)} ${Math.floor(y / edge)} ${Math.floor(z / edge)} ${on?.[index] ?? ""}`;
    const cube = cubes.get(key);
    if (cube) cube.share += shares[index] ?? 0;
    else cubes.set(key, { index, share: shares[index] ?? 0 });
  });
  const kept = [...cubes.values()];
  const most = kept.reduce((high, { share }) => Math.max(high, share), 0);
  return {
    points: kept.flatMap(({ index }) => points[index] ?? []),
    shares: kept.map(({ share }) => share / most),
    ...(on && { on: kept.flatMap(({ index }) => on[index] ?? []) }),
  };
}
