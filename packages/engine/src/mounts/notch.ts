import type { KeepOut } from "../car/car.ts";
import { keepOutSolid } from "../clearance/moving-solids.ts";
import { separation } from "../clearance/separation.ts";
import { cross, dot, FORWARD, LEFT, subtract, type Vec3, vec } from "../geometry/vec3.ts";
import type { Judged } from "./candidate.ts";
import { type NotchOutline, notchOutline } from "./notch-outline.ts";
import type { Search } from "./search.ts";
import { sweptBalls } from "./swept-balls.ts";

/** A box, in the keep-out's own axes from its centre (of a tube or a half-space: vehicle axes from the datum), m. */
export interface Notch {
  readonly keepOut: string;
  readonly from: Vec3;
  readonly to: Vec3;
  readonly axisX: Vec3;
  readonly axisY: Vec3;
  readonly origin: Vec3;
  /** The same as a template on the face that is cut; null of a tube. */
  readonly outline: NotchOutline | null;
}

/**
 * What has to be cut out of a keep-out: the envelope of the shock's sweep and the clearance inside it, as a box and as an
 * outline. Null where the sweep keeps clear. On the safe side: between stations by the bound that clearances are judged with.
 * `off`: how far the shock may hang off that place, m, so that it keeps its clearance there too.
 */
export function notchFor(search: Search, judged: Judged, keepOut: KeepOut, off = 0): Notch | null {
  const isBox = keepOut.shape === "box";
  const axisX = isBox ? keepOut.axisX : FORWARD;
  const axisY = isBox ? keepOut.axisY : LEFT;
  const axisZ = cross(axisX, axisY);
  const origin = isBox ? keepOut.centre : vec(0, 0, 0);
  const half = isBox ? keepOut.half : null;
  const solid = keepOutSolid(keepOut);
  const inside = sweptBalls(search, judged, keepOut.clearance + off).filter(
    ({ centre, radius }) => separation({ shape: "capsule", from: centre, to: centre, radius }, solid).distance < 0,
  );
  if (inside.length === 0) return null;
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  const halves = half ? [half.x, half.y, half.z] : [Infinity, Infinity, Infinity];
  for (const { centre, radius } of inside) {
    const from = subtract(centre, origin);
    const at = [axisX, axisY, axisZ].map((axis) => dot(from, axis));
    const past = at.map((each, n) => Math.max(0, Math.abs(each) - halves[n]!));
    at.forEach((each, n) => {
      // Past the box in the other two directions, less than the whole ball reaches into it.
      const others = past.reduce((sum, over, m) => (m === n ? sum : sum + over * over), 0);
      const reach = Math.sqrt(Math.max(0, radius * radius - others));
      low[n] = Math.min(low[n]!, Math.max(-halves[n]!, each - reach));
      high[n] = Math.max(high[n]!, Math.min(halves[n]!, each + reach));
    });
  }
  const corner = (c: readonly number[]): Vec3 => vec(c[0]!, c[1]!, c[2]!);
  const outline = notchOutline(keepOut, inside, low, high);
  return { keepOut: keepOut.name, from: corner(low), to: corner(high), axisX, axisY, origin, outline };
}
