import type { Car, Linkage } from "../car/car.ts";
import { addScaled, distance, LEFT, type Vec3 } from "../geometry/vec3.ts";

/**
 * The car with everything at the wheel end moved out by `out` (m; in where negative): hub face, outer pivots, outer joint.
 * The chassis side stays. Of the half shaft the pieces stay as they are: what the shaft gets longer by goes out of the
 * spline. Shock, strap and bump stop are left off, as their lower mounts would have to be set anew.
 */
export function movedOut(car: Car, out: number): Car {
  const { shock: _shock, strap: _strap, bumpStop: _bumpStop, right: _right, ...rest } = car;
  const moved = (point: Vec3): Vec3 => addScaled(point, LEFT, out);
  const { driveshaft, wheel } = rest;
  return {
    ...rest,
    wheel: { ...wheel, hubFace: moved(wheel.hubFace) },
    linkage: linkageMoved(rest.linkage, moved),
    ...(driveshaft && { driveshaft: shaftMoved(driveshaft, moved) }),
  };
}

function linkageMoved(linkage: Linkage, moved: (point: Vec3) => Vec3): Linkage {
  switch (linkage.kind) {
    case "h-arm": {
      const { lowerArm, upperLink } = linkage;
      const { outerFront, outerRear } = lowerArm;
      return {
        ...linkage,
        lowerArm: { ...lowerArm, outerFront: moved(outerFront), outerRear: moved(outerRear) },
        upperLink: { ...upperLink, outer: moved(upperLink.outer) },
      };
    }
    case "double-a-arm": {
      const { lowerArm, upperArm, toeLink } = linkage;
      return {
        ...linkage,
        lowerArm: { ...lowerArm, outer: moved(lowerArm.outer) },
        upperArm: { ...upperArm, outer: moved(upperArm.outer) },
        toeLink: { ...toeLink, outer: moved(toeLink.outer) },
      };
    }
    case "trailing-arm":
      return { ...linkage, trailingArm: { ...linkage.trailingArm, hub: moved(linkage.trailingArm.hub) } };
    case "five-link":
      return { ...linkage, links: linkage.links.map((link) => ({ ...link, outer: moved(link.outer) })) };
  }
}

function shaftMoved(
  shaft: NonNullable<Car["driveshaft"]>,
  moved: (point: Vec3) => Vec3,
): NonNullable<Car["driveshaft"]> {
  const outer = { ...shaft.outer, centre: moved(shaft.outer.centre) };
  const longer = distance(shaft.inner.centre, outer.centre) - distance(shaft.inner.centre, shaft.outer.centre);
  const { slip } = shaft;
  if (!slip) return { ...shaft, outer };
  const { engagement, leastEngagement, pushInLeft } = slip;
  return {
    ...shaft,
    outer,
    slip: {
      engagement: engagement - longer,
      leastEngagement,
      ...(pushInLeft !== undefined && { pushInLeft: pushInLeft + longer }),
    },
  };
}
