import type { FiveLinkLinkage } from "../car/car.ts";
import { cross, subtract, type Vec3 } from "../geometry/vec3.ts";
import type { Lengths } from "./kind.ts";
import { givenLength } from "./parts.ts";

/** Points of the five links, flat; rows are in the order that elimination without exchange bears best. */
export interface FiveLinkConstants {
  readonly wheelCentre: Vec3;
  /** Chassis ends, 5 × 3, m. */
  readonly inner: Float64Array;
  /** Spindle ends from the wheel centre in the design position, 5 × 3, m. */
  readonly arm: Float64Array;
  /** Half of each length squared, m². */
  readonly halfSquare: Float64Array;
}

export function fiveLinkConstants(linkage: FiveLinkLinkage, wheelCentre: Vec3, lengths: Lengths): FiveLinkConstants {
  const rows = linkage.links.map((link) => {
    const reach = subtract(link.outer, wheelCentre);
    const along = subtract(link.outer, link.inner);
    const turning = cross(reach, along);
    return {
      link,
      reach,
      length: givenLength(lengths, linkId(link.name), link.inner, link.outer),
      gradient: [along.x, along.y, turning.x, turning.y, turning.z],
    };
  });
  const order = rowOrder(rows.map((row) => row.gradient));
  const sorted = order.map((index) => rows[index]!);
  const inner = new Float64Array(15);
  const arm = new Float64Array(15);
  const halfSquare = new Float64Array(5);
  for (const [k, { link, reach, length }] of sorted.entries()) {
    put(link.inner, inner, 3 * k);
    put(reach, arm, 3 * k);
    halfSquare[k] = 0.5 * length * length;
  }
  return { wheelCentre, inner, arm, halfSquare };
}

function put({ x, y, z }: Vec3, into: Float64Array, at: number): void {
  into[at] = x;
  into[at + 1] = y;
  into[at + 2] = z;
}

/** The order of rows that partial pivoting would choose. */
function rowOrder(matrix: readonly (readonly number[])[]): readonly number[] {
  const m = matrix.map((row) => [...row]);
  const order = m.map((_, index) => index);
  for (let p = 0; p < m.length; p += 1) {
    let best = p;
    for (let r = p + 1; r < m.length; r += 1) if (Math.abs(m[r]![p]!) > Math.abs(m[best]![p]!)) best = r;
    [m[p], m[best]] = [m[best]!, m[p]!];
    [order[p], order[best]] = [order[best]!, order[p]!];
    if (m[p]![p] === 0) continue;
    for (let r = p + 1; r < m.length; r += 1) {
      const factor = m[r]![p]! / m[p]![p]!;
      for (let c = p; c < m.length; c += 1) m[r]![c] = m[r]![c]! - factor * m[p]![c]!;
    }
  }
  return order;
}

/** Member id of a link by its name. */
export const linkId = (name: string): string => `links.${name}`;
