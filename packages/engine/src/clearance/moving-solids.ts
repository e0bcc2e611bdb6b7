import type { KeepOut } from "../car/car.ts";
import type { Corner } from "../cycle/corner.ts";
import { type Position, placeMember, placeOn } from "../cycle/position.ts";

import { type Capsule, type Solid, tyreSolid, type WheelSolid } from "./shapes.ts";

/** The corner's moving parts as rounded solids where they are in one position. */
export interface MovingSolids {
  readonly tyre: WheelSolid;
  /** In the order of `corner.members`. */
  readonly members: readonly Capsule[];
  readonly shaft?: Capsule;
  readonly shock?: Capsule;
}

export function movingSolids(corner: Corner, position: Position): MovingSolids {
  const { wheel, driveshaft, shock } = corner.car;
  return {
    tyre: tyreSolid(
      position.wheelCentre,
      position.spinAxis,
      wheel.freeRadius,
      wheel.sectionWidth,
      wheel.shoulderRadius,
    ),
    members: corner.members.map((member) => {
      const [from, to] = placeMember(position, member);
      return { shape: "capsule", from, to, radius: member.diameter / 2 };
    }),
    ...(driveshaft && {
      shaft: {
        shape: "capsule",
        from: driveshaft.inner.centre,
        to: placeOn(position, driveshaft.outer.centre, "spindle"),
        radius: driveshaft.diameter / 2,
      },
    }),
    ...(shock && {
      shock: {
        shape: "capsule",
        from: placeOn(position, shock.upper.point, shock.upper.on),
        to: placeOn(position, shock.lower.point, shock.lower.on),
        radius: shock.diameter / 2,
      },
    }),
  };
}

export function keepOutSolid(keepOut: KeepOut): Solid {
  switch (keepOut.shape) {
    case "box":
      return {
        shape: "box",
        centre: keepOut.centre,
        axisX: keepOut.axisX,
        axisY: keepOut.axisY,
        half: keepOut.half,
        radius: 0,
      };
    case "tube":
      return { shape: "capsule", from: keepOut.from, to: keepOut.to, radius: keepOut.diameter / 2 };
    case "half-space":
      return { shape: "half-space", point: keepOut.point, normal: keepOut.normal };
  }
}
