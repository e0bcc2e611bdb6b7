import type { ArmId, Car, Linkage } from "../car/car.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import { kindOf } from "../linkage/kinds.ts";

/** Names of the mounts beside the pivots, as the document has them. */
export const MOUNT_PLACES = [
  "shock.upper",
  "shock.lower",
  "strap.upper",
  "strap.lower",
  "bumpStop.base",
  "bumpStop.strikes",
] as const;
export type MountPlace = (typeof MOUNT_PLACES)[number];

const MOUNT_WORDS: Readonly<Record<MountPlace, string>> = {
  "shock.upper": "the shock's upper mount",
  "shock.lower": "the shock mount",
  "strap.upper": "the strap's upper tab",
  "strap.lower": "the strap tab",
  "bumpStop.base": "the bump stop's base",
  "bumpStop.strikes": "the bump-stop pad",
};

/** A place in the trade's words. */
export const placeWords = (place: string): string => MOUNT_WORDS[place as MountPlace] ?? place;

/** The part of the document that a car's places are given by. */
type Placed = Pick<Car, "linkage" | "shock" | "strap" | "bumpStop">;

/** Every place of a car that can carry a load, with its point in the design position. */
export function placesOf(car: Placed): ReadonlyMap<string, Vec3> {
  const { linkage } = car;
  const places = new Map(
    kindOf<Linkage>(linkage)
      .pivots(linkage)
      .map(({ id, point }) => [id, point]),
  );
  for (const [place, { point }] of mountsOf(car)) places.set(place, point);
  return places;
}

export function mountsOf({ shock, strap, bumpStop }: Placed) {
  return [
    ...(shock ? ([["shock.upper", shock.upper] as const, ["shock.lower", shock.lower] as const] as const) : []),
    ...(strap ? ([["strap.upper", strap.upper] as const, ["strap.lower", strap.lower] as const] as const) : []),
    ...(bumpStop
      ? ([["bumpStop.base", bumpStop.base] as const, ["bumpStop.strikes", bumpStop.strikes] as const] as const)
      : []),
  ];
}

export interface ArmPlace {
  readonly id: string;
  readonly label: string;
  readonly point: Vec3;
  readonly isPivot: boolean;
}

/** Pivots and mounts of one arm. */
export function placesOnArm(car: Placed, arm: ArmId): readonly ArmPlace[] {
  const { linkage } = car;
  return [
    ...kindOf<Linkage>(linkage)
      .pivots(linkage)
      .filter(({ shank }) => shank.body === arm)
      .map(({ id, label, point }) => ({ id, label: label.replace(/^.*, /, ""), point, isPivot: true })),
    ...mountsOf(car)
      .filter(([, mount]) => mount.on === arm)
      .map(([id, { point }]) => ({ id, label: placeWords(id), point, isPivot: false })),
  ];
}
