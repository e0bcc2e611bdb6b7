import type { ArmId, Car, Linkage } from "../car/car.ts";
import { kindOf } from "../linkage/kinds.ts";
import { INCH } from "../units/convert.ts";
import type { ArmFrame } from "./arm-frame.ts";
import type { TubeEntry } from "./entry.ts";
import { makeArmFrame } from "./make-arm-frame.ts";
import { MATERIALS, type Material } from "./material.ts";
import { ownArmFrame } from "./own-arm-frame.ts";

/** What stands for a tube of which the document says nothing: the weaker common steel, .120 in of an arm, .095 in of a link. */
const ARM_WALL = 0.12 * INCH;
const LINK_WALL = 0.095 * INCH;

/** Every arm of the car as a frame: the builder's own where the document has one, otherwise made from the car's points. */
export function armFrames(car: Car): readonly ArmFrame[] {
  return kindOf<Linkage>(car.linkage)
    .arms(car.linkage)
    .map(({ body }) => armFrame(car, body));
}

export function armFrame(car: Car, arm: ArmId): ArmFrame {
  const own = car.strength?.frames[arm];
  return own ? ownArmFrame(car, arm, own) : makeArmFrame(car, arm, armTube(car, arm));
}

/** An arm as the document names it. */
export const TUBE_NAMES: Readonly<Record<ArmId, string>> = {
  "lower-arm": "lowerArm",
  "upper-arm": "upperArm",
  "trailing-arm": "trailingArm",
};

/** Wall and material of an arm's tubes, and of its cross tubes. */
export function armTube(car: Car, arm: ArmId): TubeEntry {
  const given = car.strength?.tubes[TUBE_NAMES[arm]];
  if (given) return given;
  const diameter = kindOf<Linkage>(car.linkage)
    .members(car.linkage)
    .find(({ body }) => body === arm)!.diameter;
  return { wall: ARM_WALL, material: MATERIALS[0]!, crossDiameter: diameter, crossWall: ARM_WALL, eccentricity: 0 };
}

/** Wall and material of every link, by member id. */
export function linkTubes(car: Car): Readonly<Record<string, { readonly wall: number; readonly material: Material }>> {
  const links = kindOf<Linkage>(car.linkage)
    .members(car.linkage)
    .filter(({ body }) => body === "link");
  return Object.fromEntries(
    links.map(({ id }) => {
      const given = car.strength?.tubes[id];
      return [id, { wall: given?.wall ?? LINK_WALL, material: given?.material ?? MATERIALS[0]! }];
    }),
  );
}
