import type { KeepOut } from "../car/car.ts";
import { keepOutSolid } from "../clearance/moving-solids.ts";
import { separation } from "../clearance/separation.ts";
import { between, cross, dot, FORWARD, LEFT, subtract, type Vec3, vec } from "../geometry/vec3.ts";
import { type Judged, trialOf } from "./candidate.ts";
import { shockRadius } from "./request.ts";
import type { Search } from "./search.ts";

/** A box, in the keep-out's own axes from its centre (of a tube or a half-space: vehicle axes from the datum), m. */
export interface Notch {
  readonly keepOut: string;
  readonly from: Vec3;
  readonly to: Vec3;
  readonly axisX: Vec3;
  readonly axisY: Vec3;
  readonly origin: Vec3;
}

/** Places along the shock at which its round is taken; what lies between two of them is added to the radius. */
const ALONG = 200;

/**
 * What has to be cut out of a keep-out: the envelope of the shock's sweep and the clearance inside it, as a box. Null where
 * the sweep keeps clear. On the safe side: between stations by the bound that clearances are judged with.
 */
export function notchFor(search: Search, judged: Judged, keepOut: KeepOut): Notch | null {
  const trial = trialOf(search, judged.shock, judged.lower);
  const { at } = trial.path;
  const isBox = keepOut.shape === "box";
  const axisX = isBox ? keepOut.axisX : FORWARD;
  const axisY = isBox ? keepOut.axisY : LEFT;
  const axisZ = cross(axisX, axisY);
  const origin = isBox ? keepOut.centre : vec(0, 0, 0);
  const half = isBox ? keepOut.half : null;
  const solid = keepOutSolid(keepOut);
  const index = trial.obstacles.findIndex(({ id }) => id === keepOut.name);
  const between0 =
    index < 0
      ? 0
      : trial.needs[index]! - trial.radius - trial.obstacles[index]!.radius - trial.obstacles[index]!.wanted;
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let k = 0; k <= trial.last; k += 1) {
    const foot = vec(at[3 * k]!, at[3 * k + 1]!, at[3 * k + 2]!);
    const length = Math.hypot(judged.upper.x - foot.x, judged.upper.y - foot.y, judged.upper.z - foot.z);
    const reach = shockRadius(judged.shock) + keepOut.clearance + between0 + length / ALONG / 2;
    for (let i = 0; i <= ALONG; i += 1) {
      const point = between(judged.upper, foot, i / ALONG);
      const ball = { shape: "capsule", from: point, to: point, radius: reach } as const;
      if (separation(ball, solid).distance >= 0) continue;
      const from = subtract(point, origin);
      [axisX, axisY, axisZ].forEach((axis, n) => {
        const most = half ? [half.x, half.y, half.z][n]! : Infinity;
        low[n] = Math.min(low[n]!, Math.max(-most, dot(from, axis) - reach));
        high[n] = Math.max(high[n]!, Math.min(most, dot(from, axis) + reach));
      });
    }
  }
  if (low[0]! > high[0]!) return null;
  const corner = (c: readonly number[]): Vec3 => vec(c[0]!, c[1]!, c[2]!);
  return { keepOut: keepOut.name, from: corner(low), to: corner(high), axisX, axisY, origin };
}
