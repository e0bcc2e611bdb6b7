import type { ArmId, Car, Linkage, UnitSystem } from "../car/car.ts";
import type { Operation } from "../document/operation.ts";
import { kindOf } from "../linkage/kinds.ts";
import { typedLength } from "../units/typed.ts";
import { armTube, TUBE_NAMES } from "./arm-frames.ts";
import type { GussetEntry, StrengthEntry, TubeEntry, UnderTubeEntry } from "./entry.ts";
import { typedSize } from "./size-words.ts";
import type { TubeSize } from "./stock-tubes.ts";

/** What is done to the frame that is made of an arm's points; what is left out stays. */
export interface ArmChange {
  readonly main?: TubeSize;
  readonly cross?: TubeSize;
  readonly under?: UnderTubeEntry;
  readonly gusset?: GussetEntry;
}

const NO_STRENGTH: StrengthEntry = {
  materials: [],
  tubes: {},
  frames: {},
  rodEnds: {},
  bolts: {},
  tabs: {},
  welds: {},
};

/** The car with an arm changed, as its document would be read after `changeOperations`. */
export function carWithArm(car: Car, arm: ArmId, { main, cross, under, gusset }: ArmChange): Car {
  const name = TUBE_NAMES[arm];
  const before = armTube(car, arm);
  const tube: TubeEntry = {
    ...before,
    ...(main && { wall: main.wall }),
    ...(cross && { crossDiameter: cross.diameter, crossWall: cross.wall }),
    ...(under && { under }),
    ...(gusset && { gusset }),
  };
  const strength = car.strength ?? NO_STRENGTH;
  const linkage = main
    ? ({
        ...car.linkage,
        [name]: { ...(car.linkage as unknown as Record<string, object>)[name], diameter: main.diameter },
      } as Linkage)
    : car.linkage;
  return { ...car, linkage, strength: { ...strength, tubes: { ...strength.tubes, [name]: tube } } };
}

/** The edits of the document that make it. Cross tubes that followed the arm's own are written down, so that they stay. */
export function changeOperations(car: Car, arm: ArmId, change: ArmChange): readonly Operation[] {
  const { units } = car;
  const name = TUBE_NAMES[arm];
  const at = `strength.tubes.${name}`;
  const present = armTube(car, arm);
  const cross = change.cross ?? { diameter: present.crossDiameter, wall: present.crossWall };
  return [
    ...(change.main
      ? [
          { path: `linkage.${name}.diameter`, value: typedSize(change.main.diameter, units) },
          { path: `${at}.wall`, value: typedSize(change.main.wall, units) },
          { path: `${at}.material`, value: present.material.name },
        ]
      : []),
    ...(change.main || change.cross
      ? [
          { path: `${at}.crossDiameter`, value: typedSize(cross.diameter, units) },
          { path: `${at}.crossWall`, value: typedSize(cross.wall, units) },
        ]
      : []),
    ...(change.under ? [{ path: `${at}.under`, value: typedUnder(change.under, units) }] : []),
    ...(change.gusset ? [{ path: `${at}.gusset`, value: typedGusset(change.gusset, units) }] : []),
  ];
}

const typedUnder = ({ diameter, wall, drop }: UnderTubeEntry, units: UnitSystem) => ({
  diameter: typedSize(diameter, units),
  wall: typedSize(wall, units),
  drop: typedLength(drop, units),
});

const typedGusset = ({ at, thickness, depth, reach }: GussetEntry, units: UnitSystem) => ({
  at,
  thickness: typedSize(thickness, units),
  depth: typedLength(depth, units),
  reach: typedLength(reach, units),
});

/** Outside diameter of an arm's own tubes, m. */
export const armDiameter = ({ linkage }: Car, arm: ArmId): number =>
  kindOf<Linkage>(linkage)
    .members(linkage)
    .find(({ body }) => body === arm)!.diameter;
