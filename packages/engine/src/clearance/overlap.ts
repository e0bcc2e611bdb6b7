import {
  addScaled,
  anySquareTo,
  cross,
  dot,
  FORWARD,
  LEFT,
  length,
  scale,
  subtract,
  UP,
  type Vec3,
} from "../geometry/vec3.ts";
import { type Core, farthestDifference } from "./core.ts";

/** Stops when the depth is known to this, m. */
const DEPTH_TOLERANCE = 1e-10;
/** A difference of cores thinner than this (m) is flat: cores that touch in it overlap by nothing. */
const FLAT = 1e-12;
const MOST_FACETS_TRIED = 150;

export interface Overlap {
  /** Least shift that parts the cores, m: b's along `normal`. Never less than true. */
  readonly depth: number;
  /** Unit vector along which that is. */
  readonly normal: Vec3;
}

/**
 * How deep two cores that touch or overlap are in one another: the least distance from the origin to the surface of
 * the difference a − b. A polyhedron inside the difference is grown where it comes nearest to the origin, until a facet
 * lies on the surface (expanding polytope; van den Bergen, Collision Detection in Interactive 3D Environments, 2003).
 */
export function overlapOfCores(coreA: Core, coreB: Core): Overlap {
  const start = startOf(coreA, coreB);
  if ("flatAcross" in start) return { depth: 0, normal: start.flatAcross };
  let facets: readonly Facet[] = start.facets;
  let normal = UP;
  let depth = Number.POSITIVE_INFINITY;
  for (let tried = 0; tried < MOST_FACETS_TRIED; tried++) {
    const facet = facets.reduce((m, f) => (f.height < m.height ? f : m));
    const next = farthestDifference(coreA, coreB, facet.normal).difference;
    const reach = dot(next, facet.normal);
    if (reach < depth) {
      depth = reach;
      normal = facet.normal;
    }
    if (depth - facet.height <= DEPTH_TOLERANCE) return { depth, normal };
    const grown = grow(facets, next);
    if (grown === undefined) break;
    facets = grown;
  }
  return leastAroundEdges(coreA, coreB, { depth, normal });
}

/**
 * Where a round core is all but as deep in a whole ring of directions (a bar along a wheel's axis), facets run out
 * before the tolerance is met. The best direction then is square to an edge of a core: one angle is left to search.
 */
function leastAroundEdges(coreA: Core, coreB: Core, found: Overlap): Overlap {
  let best = found;
  for (const edge of [...coreA.edges, ...coreB.edges]) {
    const size = length(edge);
    if (size <= FLAT) continue;
    const first = anySquareTo(edge);
    const second = scale(cross(edge, first), 1 / size);
    const normalAt = (angle: number): Vec3 => addScaled(scale(first, Math.cos(angle)), second, Math.sin(angle));
    const depthAt = (angle: number): number => {
      const normal = normalAt(angle);
      return dot(farthestDifference(coreA, coreB, normal).difference, normal);
    };
    const angle = leastOnCircle(depthAt);
    const depth = depthAt(angle);
    if (depth < best.depth) best = { depth, normal: normalAt(angle) };
  }
  return best;
}

const LOOKS = 72;
/** Golden-section steps from one look to 1e-9 rad, where the depth no longer changes. */
const NARROWINGS = 40;

/** The angle (rad) at which a function round the circle is least: the best of some looks, then golden section. */
function leastOnCircle(valueAt: (angle: number) => number): number {
  const step = (2 * Math.PI) / LOOKS;
  const values = Array.from({ length: LOOKS }, (_, i) => valueAt(i * step));
  const look = values.indexOf(Math.min(...values));
  const golden = (Math.sqrt(5) - 1) / 2;
  let low = (look - 1) * step;
  let high = (look + 1) * step;
  for (let i = 0; i < NARROWINGS; i++) {
    const inner = high - golden * (high - low);
    const outer = low + golden * (high - low);
    if (valueAt(inner) < valueAt(outer)) high = outer;
    else low = inner;
  }
  return (low + high) / 2;
}

/** A triangle of the polyhedron, its corners anticlockwise seen from outside. */
interface Facet {
  readonly corners: readonly [Vec3, Vec3, Vec3];
  /** Unit vector out of the polyhedron. */
  readonly normal: Vec3;
  /** Of its plane over the origin, m; negative while the polyhedron does not hold the origin. */
  readonly height: number;
}

function facetOf(p: Vec3, q: Vec3, r: Vec3): Facet | undefined {
  const square = cross(subtract(q, p), subtract(r, p));
  const area = length(square);
  if (area === 0) return undefined;
  const normal = scale(square, 1 / area);
  return { corners: [p, q, r], normal, height: dot(normal, p) };
}

type Start = { readonly facets: readonly Facet[] } | { readonly flatAcross: Vec3 };

/** A tetrahedron of points of the difference, or the direction across which the difference has no thickness. */
function startOf(coreA: Core, coreB: Core): Start {
  const farthest = (direction: Vec3): Vec3 => farthestDifference(coreA, coreB, direction).difference;
  const thickness = (direction: Vec3): number =>
    dot(subtract(farthest(direction), farthest(scale(direction, -1))), direction);

  const along = [FORWARD, LEFT, UP].reduce((m, d) => (thickness(d) > thickness(m) ? d : m));
  const p = farthest(along);
  const q = farthest(scale(along, -1));
  const line = subtract(q, p);
  const lineLength = length(line);
  if (lineLength <= FLAT) return { flatAcross: UP };

  const first = anySquareTo(line);
  const second = scale(cross(line, first), 1 / lineLength);
  const aside = thickness(first) > thickness(second) ? first : second;
  if (thickness(aside) <= FLAT) return { flatAcross: aside };
  const r = farther(farthest(aside), farthest(scale(aside, -1)), aside, p);

  const square = cross(line, subtract(r, p));
  const squareLength = length(square);
  const up = squareLength > 0 ? scale(square, 1 / squareLength) : cross(scale(line, 1 / lineLength), aside);
  if (thickness(up) <= FLAT) return { flatAcross: up };
  const s = farther(farthest(up), farthest(scale(up, -1)), up, p);

  const rightHanded = dot(subtract(s, p), up) < 0;
  const facets = rightHanded
    ? [facetOf(p, q, r), facetOf(p, s, q), facetOf(q, s, r), facetOf(r, s, p)]
    : [facetOf(p, r, q), facetOf(p, q, s), facetOf(q, r, s), facetOf(r, p, s)];
  const whole = facets.filter((f) => f !== undefined);
  return whole.length === 4 ? { facets: whole } : { flatAcross: up };
}

/** Which of two points lies farther from `from` along ±direction. */
const farther = (m: Vec3, n: Vec3, direction: Vec3, from: Vec3): Vec3 =>
  Math.abs(dot(subtract(n, from), direction)) > Math.abs(dot(subtract(m, from), direction)) ? n : m;

/**
 * The polyhedron with one more corner: in place of the facets that the corner sees, new ones from their common rim.
 * A facet that the corner lies in the plane of is seen too (the flat sides of a wheel have many), or slivers would be
 * left standing on its edges. Undefined where rounding makes that impossible.
 */
function grow(facets: readonly Facet[], corner: Vec3): readonly Facet[] | undefined {
  const kept: Facet[] = [];
  const rim: [Vec3, Vec3][] = [];
  for (const facet of facets) {
    if (dot(facet.normal, corner) < facet.height - FLAT) {
      kept.push(facet);
      continue;
    }
    const [p, q, r] = facet.corners;
    for (const [from, to] of [
      [p, q],
      [q, r],
      [r, p],
    ] as const) {
      // An edge between two facets that the new corner sees is passed once each way, and falls away.
      const twin = rim.findIndex((edge) => edge[0] === to && edge[1] === from);
      if (twin >= 0) rim.splice(twin, 1);
      else rim.push([from, to]);
    }
  }
  if (rim.length === 0 || kept.length === 0) return undefined;
  for (const [from, to] of rim) {
    const facet = facetOf(from, to, corner);
    if (facet === undefined) return undefined;
    kept.push(facet);
  }
  // Euler: a closed surface of triangles gains two with a corner, less two for each old corner that is swallowed.
  return kept.length <= facets.length + 2 ? kept : undefined;
}
