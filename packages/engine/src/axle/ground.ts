import { addScaled, dot, midpoint, subtract, type Vec3, vec } from "../geometry/vec3.ts";

/** A plane that both tyres stand on, in vehicle axes fixed to the body. */
export interface Ground {
  /** Middle between the contact points, m. */
  readonly point: Vec3;
  /** Unit vector, up from the ground. */
  readonly normal: Vec3;
}

/** A wheel as the ground sees it: a disc of loaded radius (m) about the spin axis (unit vector). */
export interface Disc {
  readonly centre: Vec3;
  readonly axis: Vec3;
  readonly radius: number;
}

export interface GroundUnder extends Ground {
  /** Roll of the body against the ground, rad, right-handed about the forward axis: positive when it leans right. */
  readonly bodyRoll: number;
  /** Unit vector along the ground to the left. */
  readonly toLeft: Vec3;
  readonly contacts: { readonly left: Vec3; readonly right: Vec3 };
  /** m, along the ground across the car. */
  readonly trackWidth: number;
}

/** Change of roll, rad, below which Newton's method has nothing left to do. */
const CONVERGED = 1e-15;
const MOST_ITERATIONS = 30;

/**
 * The ground that touches both discs from below. With the body rolled by φ the ground's normal in body axes is
 * n = (0, sin φ, cos φ); a disc's lowest point toward it has the height h(n) = min over the disc of n·p, and φ is where both
 * heights agree. By the envelope theorem dh/dφ = p·dn/dφ with p held, and dn/dφ is the ground's own direction to the left,
 * so that the slope of Newton's method is the track width itself: exact, never zero, quadratic convergence.
 */
export function groundUnder(left: Disc, right: Disc): GroundUnder {
  let roll = 0;
  for (let i = 0; i < MOST_ITERATIONS; i += 1) {
    const at = touching(left, right, roll);
    const change = dot(subtract(at.contacts.left, at.contacts.right), at.normal) / at.trackWidth;
    roll -= change;
    if (Math.abs(change) < CONVERGED) break;
  }
  return touching(left, right, roll);
}

function touching(left: Disc, right: Disc, bodyRoll: number): GroundUnder {
  const normal = vec(0, Math.sin(bodyRoll), Math.cos(bodyRoll));
  const toLeft = vec(0, normal.z, -normal.y);
  const contacts = { left: lowestToward(left, normal), right: lowestToward(right, normal) };
  return {
    bodyRoll,
    normal,
    toLeft,
    contacts,
    point: midpoint(contacts.left, contacts.right),
    trackWidth: dot(subtract(contacts.left, contacts.right), toLeft),
  };
}

/** Point of a disc that lies farthest against the unit normal. */
function lowestToward({ centre, axis, radius }: Disc, normal: Vec3): Vec3 {
  const across = dot(axis, normal);
  const inPlane = addScaled(normal, axis, -across);
  return addScaled(centre, inPlane, -radius / Math.sqrt(dot(inPlane, inPlane)));
}
