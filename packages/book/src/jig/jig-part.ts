import {
  type BodyId,
  type Car,
  type Corner,
  cross,
  distance,
  dot,
  lengthOf,
  type Mount,
  subtract,
  unitVector,
  type Vec3,
} from "@armwright/engine";

/** A place that a jig has to hold, in the design position. */
export interface JigPoint {
  /** Its mark on the sheet and on the jig: A, B, C … */
  readonly mark: string;
  readonly label: string;
  /** Vehicle axes, m. */
  readonly point: Vec3;
}

/** Places that keep their distances to each other: a welded part, the chassis with what is bolted to it, the corner at ride. */
export interface JigPart {
  readonly id: string;
  readonly title: string;
  readonly points: readonly JigPoint[];
  /** Height of each point over the lowest one, m, with the part laid flat on a bench; null where it has no plane. */
  readonly heights: readonly number[] | null;
}

const TITLES: Readonly<Record<BodyId, string>> = {
  chassis: "Chassis tabs and mounts",
  "lower-arm": "Lower arm",
  "upper-arm": "Upper arm",
  "trailing-arm": "Trailing arm with hub",
  spindle: "Spindle",
};

/** Everything that has to be held in place, a part at a time. */
export function jigParts(corner: Corner): readonly JigPart[] {
  const { car } = corner;
  const bodies: readonly BodyId[] = ["chassis", ...corner.arms.map(({ body }) => body), "spindle"];
  const parts = bodies.flatMap((body): JigPart[] => {
    if (body === "spindle" && car.linkage.kind === "trailing-arm") return [];
    const own =
      body === "trailing-arm" ? [...placesOn(corner, body), ...placesOn(corner, "spindle")] : placesOn(corner, body);
    const points = marked(distinct(own));
    return points.length < 2 ? [] : [{ id: body, title: TITLES[body], points, heights: heightsOff(points, body) }];
  });
  return [wholeCorner(corner), ...parts, ...links(corner)];
}

/** A stair of more places than this does not go on a sheet of paper. */
const MOST_PLACES = 11;

/** Every pivot of the corner at ride height with its hub; shock and shaft too where the sheet has room for them. */
function wholeCorner(corner: Corner): JigPart {
  const { driveshaft, shock, wheel } = corner.car;
  const hub = { label: "hub face, on the stub's axis", point: wheel.hubFace };
  const places: Place[] = [hub, ...corner.pivots.map(({ label, point }) => ({ label, point }))];
  const more: Place[] = [
    ...(shock
      ? [
          { label: "shock, upper mount", point: shock.upper.point },
          { label: "shock, lower mount", point: shock.lower.point },
        ]
      : []),
    ...(driveshaft
      ? [
          { label: "half shaft, inner joint", point: driveshaft.inner.centre },
          { label: "half shaft, outer joint", point: driveshaft.outer.centre },
        ]
      : []),
  ];
  const shown = distinct([...places, ...more].slice(0, Math.max(MOST_PLACES, places.length)));
  return { id: "corner", title: "Whole corner at ride height", points: marked(shown), heights: null };
}

interface Place {
  readonly label: string;
  readonly point: Vec3;
}

function placesOn(corner: Corner, body: BodyId): Place[] {
  const { car } = corner;
  const pivots = corner.pivots
    .filter(({ boltSide, shank }) => boltSide === body || shank.body === body)
    .map(({ label, point }) => ({ label, point }));
  const mounts = (
    [
      ["shock", car.shock?.upper],
      ["shock", car.shock?.lower],
    ] as const
  ).flatMap(([name, mount], index) => on(body, mount, `${name}, ${index === 0 ? "upper" : "lower"} mount`));
  return [
    ...pivots,
    ...mounts,
    ...on(body, car.strap?.upper, "strap, upper tab"),
    ...on(body, car.strap?.lower, "strap, lower tab"),
    ...on(body, car.bumpStop?.base, "bump stop, base"),
    ...on(body, car.bumpStop?.strikes, "bump stop, landing place"),
    ...shaftPlaces(car, body),
    ...(body === "spindle" ? [{ label: "hub face, on the stub's axis", point: car.wheel.hubFace }] : []),
  ];
}

const on = (body: BodyId, mount: Mount | undefined, label: string): Place[] =>
  mount?.on === body ? [{ label, point: mount.point }] : [];

function shaftPlaces({ driveshaft }: Car, body: BodyId): Place[] {
  if (!driveshaft) return [];
  if (body === "chassis") return [{ label: "half shaft, inner joint", point: driveshaft.inner.centre }];
  return body === "spindle" ? [{ label: "half shaft, outer joint", point: driveshaft.outer.centre }] : [];
}

const links = (corner: Corner): JigPart[] =>
  corner.members
    .filter(({ body }) => body === "link")
    .map(({ id, label, from, to }) => ({
      id,
      title: capital(label),
      points: marked([
        { label: "inner rod end", point: from.point },
        { label: "outer rod end", point: to.point },
      ]),
      heights: null,
    }));

const MARKS = "ABCDEFGHJKLMNPQRSTUVWXYZ";
const marked = (places: readonly Place[]): JigPoint[] =>
  places.map((place, index) => ({ ...place, mark: MARKS[index] ?? `${index + 1}` }));

/** Places that fall on each other are one. */
const distinct = (places: readonly Place[]): Place[] =>
  places.filter((place, index) => places.findIndex((other) => distance(other.point, place.point) < 1e-6) === index);

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** Distance between two of a part's points, centre to centre, m. */
export const apart = (a: JigPoint, b: JigPoint): number => distance(a.point, b.point);

/**
 * Heights off the plane through the part's first three points that are not in line, its lowest point counted as 0; the plane
 * is turned so that up on the car is up on the bench.
 */
function heightsOff(points: readonly JigPoint[], body: BodyId): readonly number[] | null {
  if (body === "chassis" || points.length < 3) return null;
  const [a, b] = [points[0]!.point, points[1]!.point];
  const along = subtract(b, a);
  const third = points.slice(2).find(({ point }) => lengthOf(cross(along, subtract(point, a))) > 1e-6);
  if (!third) return null;
  const square = unitVector(cross(along, subtract(third.point, a)));
  const up = square.z < 0 ? { x: -square.x, y: -square.y, z: -square.z } : square;
  const heights = points.map(({ point }) => dot(subtract(point, a), up));
  const lowest = Math.min(...heights);
  return heights.map((height) => height - lowest);
}
