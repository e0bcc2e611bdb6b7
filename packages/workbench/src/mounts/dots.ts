import type { Vec3 } from "@armwright/engine";
import type { ViewName } from "../store/bench-state.ts";

/** Sizes of a dot, px: the more places the other mount has, the larger. Never another colour. */
export const DOT_SIZES = [1.4, 2.2, 3.2, 4.4] as const;

export interface Dots {
  /** For each size an SVG path of points, to be drawn with round ends. */
  readonly paths: readonly string[];
}

/** Points that fall on one spot of a view become one dot. `place`: where a point is, px. */
export function dotsOf(
  points: readonly Vec3[],
  shares: readonly number[],
  place: (point: Vec3, index: number) => { readonly x: number; readonly y: number },
): Dots {
  const spots = new Map<string, { x: number; y: number; share: number }>();
  points.forEach((point, i) => {
    const { x, y } = place(point, i);
    const key = `${x.toFixed(1)} ${y.toFixed(1)}`;
    const known = spots.get(key);
    if (known) known.share += shares[i] ?? 0;
    else spots.set(key, { x, y, share: shares[i] ?? 0 });
  });
  let most = 0;
  for (const { share } of spots.values()) most = Math.max(most, share);
  const paths = DOT_SIZES.map(() => "");
  for (const [key, { share }] of spots) {
    const size = Math.min(DOT_SIZES.length - 1, Math.floor((share / most) * DOT_SIZES.length));
    paths[size] += `M${key}h0`;
  }
  return { paths };
}

/** Across and up in a view of the car, m: from behind and above what is out is to the left, from the left what is forward. */
export const inView = (view: ViewName, { x, y, z }: Vec3): { readonly across: number; readonly up: number } => ({
  across: view === "left" ? x : y,
  up: view === "top" ? x : z,
});
