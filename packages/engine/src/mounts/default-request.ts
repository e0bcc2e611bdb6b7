import { type Corner, makeCorner } from "../cycle/corner.ts";
import { addScaled, midpoint, UP, type Vec3, vec } from "../geometry/vec3.ts";
import { reportTravel } from "../limits/travel-report.ts";
import { COMMON_REQUIREMENTS, COMMON_RESERVE, type LowerZone, type MountRequest, type ShockOption } from "./request.ts";

const INCH = 0.0254;

/**
 * What one would ask first: the travel between the car's own stops, the lower mount along the tubes of the lowest arm (on a
 * spindle without arms, a box round the present mount or the first link's end), the upper mount in a box round the present
 * one, or above the lower one. Common practice, no source.
 */
export function defaultRequest(corner: Corner, shocks: readonly ShockOption[], step = 0.5 * INCH): MountRequest {
  const { shock: present, ...bare } = corner.car;
  const travel = reportTravel(makeCorner(bare));
  const lower = lowerZones(corner);
  const shock = shocks[0];
  const middle = present?.upper.point ?? above(lowerMiddle(corner), shock);
  const half = vec(8 * INCH, 5 * INCH, 6 * INCH);
  return {
    shocks,
    upper: {
      kind: "box",
      from: addVec(middle, half, -1),
      to: addVec(middle, half, 1),
    },
    lower,
    step,
    travel: { droop: travel.droop.stop.travel, bump: travel.bump.stop.travel },
    reserve: COMMON_RESERVE,
    requirements: COMMON_REQUIREMENTS,
  };
}

const addVec = (a: Vec3, b: Vec3, sign: number): Vec3 => addScaled(a, b, sign);

function lowerZones({ arms, members, car, pivots }: Corner): readonly LowerZone[] {
  const arm = arms[0];
  const tubes = members.filter(({ body }) => body !== "link" && body === arm?.body);
  if (tubes.length > 0) {
    return tubes.map(({ id, diameter }) => ({
      kind: "tube",
      member: id,
      standoff: diameter / 2 + 0.5 * INCH,
      from: 0.15,
      to: 0.95,
    }));
  }
  const at = car.shock?.lower.point ?? pivots.find(({ boltSide }) => boltSide === "spindle")!.point;
  const half = vec(2 * INCH, 2 * INCH, 1.5 * INCH);
  return [{ kind: "box", on: "spindle", from: addScaled(at, half, -1), to: addScaled(at, half, 1) }];
}

function lowerMiddle({ members }: Corner): Vec3 {
  const member = members[0]!;
  return midpoint(member.from.point, member.to.point);
}

const above = (point: Vec3, shock: ShockOption | undefined): Vec3 =>
  addScaled(point, UP, shock ? 0.5 * (shock.shortest + shock.longest) : 0.5);
