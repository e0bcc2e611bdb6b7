import { type BodyId, type Position, placeOn, type Study, type Vec3 } from "@armwright/engine";
import { pivotPath } from "./frame.ts";
import { subtract } from "./kit/space.ts";

/** A point of the document that can be dragged, in the design position, and the body that carries it. */
export interface DesignGrip {
  readonly path: string;
  readonly label: string;
  readonly point: Vec3;
  readonly on: BodyId;
}

/** Every point that can be dragged; `all`: also those of keep-outs, underbody and hub. */
export function gripsOf({ car, corner }: Study, all: boolean): readonly DesignGrip[] {
  const { shock, strap, bumpStop, driveshaft, linkage } = car;
  const grips: DesignGrip[] = corner.pivots.map(({ id, label, point, boltSide }) => ({
    path: pivotPath(car, id),
    label,
    point,
    on: boltSide,
  }));
  const add = (path: string, label: string, point: Vec3, on: BodyId = "chassis"): void => {
    grips.push({ path, label, point, on });
  };
  if (linkage.kind === "trailing-arm")
    add("linkage.trailingArm.hub", "arm, hub end", linkage.trailingArm.hub, "trailing-arm");
  if (driveshaft) {
    add("driveshaft.output.point", "inner joint", driveshaft.inner.centre);
    add("driveshaft.outer.centre", "outer joint", driveshaft.outer.centre, "spindle");
  }
  if (shock) {
    add("shock.upper", "shock, upper eye", shock.upper.point, shock.upper.on);
    add("shock.lower", "shock, lower eye", shock.lower.point, shock.lower.on);
  }
  if (strap) {
    add("strap.upper", "strap, upper hole", strap.upper.point, strap.upper.on);
    add("strap.lower", "strap, lower hole", strap.lower.point, strap.lower.on);
  }
  if (bumpStop) {
    add("bumpStop.base", "bump stop, base", bumpStop.base.point, bumpStop.base.on);
    add("bumpStop.strikes", "bump stop, where it lands", bumpStop.strikes.point, bumpStop.strikes.on);
  }
  if (!all) return grips;
  add("wheel.hubFace", "hub face", car.wheel.hubFace, "spindle");
  car.underbody.forEach(({ name, point }, i) => {
    add(`underbody[${i}]`, name, point);
  });
  car.keepOuts.forEach((keepOut, i) => {
    if (keepOut.shape === "box") add(`keepOuts[${i}].centre`, keepOut.name, keepOut.centre);
    if (keepOut.shape === "half-space") add(`keepOuts[${i}].point`, keepOut.name, keepOut.point);
    if (keepOut.shape === "tube") {
      add(`keepOuts[${i}].from`, `${keepOut.name}, one end`, keepOut.from);
      add(`keepOuts[${i}].to`, `${keepOut.name}, other end`, keepOut.to);
    }
  });
  return grips;
}

export const gripNow = (position: Position, { point, on }: DesignGrip): Vec3 => placeOn(position, point, on);

/** Where a point that is at `now` would lie in the design position, carried by a body. */
export function toDesign(position: Position, on: BodyId, now: Vec3): Vec3 {
  const pose = position.poses[on];
  if (!pose) return now;
  const r = pose.rotation;
  const d = subtract(now, pose.translation);
  return {
    x: r[0] * d.x + r[3] * d.y + r[6] * d.z,
    y: r[1] * d.x + r[4] * d.y + r[7] * d.z,
    z: r[2] * d.x + r[5] * d.y + r[8] * d.z,
  };
}
