import type { Car, Corner, RodEnd } from "@armwright/engine";

type Strength = NonNullable<Car["strength"]>;

/** Where a bolt goes through on the left side, with what the document says of it. */
export interface BoltedPlace {
  /** `lowerArm.innerFront`, `shock.lower`. */
  readonly place: string;
  readonly label: string;
  /** None at the shock and the strap. */
  readonly rodEnd?: RodEnd;
  readonly bolt?: Strength["bolts"][string];
  readonly tab?: Strength["tabs"][string];
}

/** Pivots, then the mounts with a bolt through them; a bump stop is screwed on by its foot, as it comes. */
export function boltedPlaces({ car, pivots }: Corner): readonly BoltedPlace[] {
  const { shock, strap, strength, rodEnds } = car;
  const withEntry = (place: string, label: string, rodEnd?: RodEnd): BoltedPlace => {
    const bolt = strength?.bolts[place] ?? strength?.bolts["all"];
    const tab = strength?.tabs[place] ?? strength?.tabs["all"];
    return { place, label, ...(rodEnd && { rodEnd }), ...(bolt && { bolt }), ...(tab && { tab }) };
  };
  return [
    ...pivots.map(({ id, label }) =>
      withEntry(
        id,
        label,
        rodEnds.find(({ pivot }) => pivot === id),
      ),
    ),
    ...(shock ? ["upper", "lower"].map((end) => withEntry(`shock.${end}`, `shock, ${end} mount`)) : []),
    ...(strap ? ["upper", "lower"].map((end) => withEntry(`strap.${end}`, `strap, ${end} tab`)) : []),
  ];
}

/** Any place of the document that a part stands at, in words. */
export function placeLabel(corner: Corner, place: string): string {
  const mounts: Readonly<Record<string, string>> = {
    "bumpStop.base": "bump stop, base",
    "bumpStop.strikes": "bump stop, landing place",
  };
  return boltedPlaces(corner).find((each) => each.place === place)?.label ?? mounts[place] ?? place;
}
