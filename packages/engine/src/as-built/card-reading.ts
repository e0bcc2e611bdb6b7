import type { Dimension } from "../car/car.ts";
import { solveNear } from "../certainty/cycle-certainty.ts";
import type { Corner, solveAt } from "../cycle/corner.ts";
import { placeMember, positionOf } from "../cycle/position.ts";
import { quantitiesOf } from "../cycle/quantities.ts";
import type { Member } from "../linkage/kind.ts";
import { AT, type MotionState } from "../linkage/motion-state.ts";
import { cornerPlaces } from "../solve/car-places.ts";
import { AXES, type Axis, type PointPlace, pointAt } from "../solve/point-places.ts";
import { DEGREE, INCH } from "../units/convert.ts";
import type { CardKind } from "./logged-reading.ts";

/** What tape, angle finder and string can read with the wheel blocked at a height: what stands on a cycle card. */
export interface CardReading {
  readonly kind: CardKind;
  /** As a card has it. */
  readonly label: string;
  readonly dimension: Dimension;
  /** Read to 1/32 in. */
  readonly isFine: boolean;
  /** Of a careful reading, two standard deviations, SI; common practice. */
  readonly plusMinus: number;
  /** Id of the cycle quantity that it is made from; none for a tube's angle. */
  readonly quantity?: string;
  /** Of a tube's angle: the tube, by its label. */
  readonly of?: string;
  /** What it reads on a car in a position, SI; null where that does not exist. */
  readonly read: (solved: Solved, corner: Corner) => number | null;
}

type Solved = NonNullable<ReturnType<typeof solveAt>>;

/** What is made from a quantity. */
interface Made extends Omit<CardReading, "read" | "of"> {
  readonly from: (value: number, corner: Corner) => number;
  readonly quantity: string;
}

const TAPE = INCH / 16;
const same = (value: number): number => value;

const READINGS: readonly Made[] = [
  {
    kind: "hub-height",
    label: "hub centre over the floor",
    dimension: "length",
    isFine: false,
    plusMinus: TAPE,
    from: same,
    quantity: "wheelZ",
  },
  {
    kind: "half-track",
    label: "tyre's middle out from the centreline, at the floor",
    dimension: "length",
    isFine: false,
    plusMinus: INCH / 8,
    from: (change, corner) => corner.attitude.designContact.y + change,
    quantity: "halfTrackChange",
  },
  {
    kind: "camber",
    label: "camber, angle finder on the rim",
    dimension: "angle",
    isFine: false,
    plusMinus: 0.2 * DEGREE,
    from: same,
    quantity: "camber",
  },
  {
    kind: "toe-at-rim",
    label: "toe across the rim, front against rear (+ in)",
    dimension: "length",
    isFine: true,
    plusMinus: INCH / 32,
    from: (toe, { car }) => Math.sin(toe) * car.wheel.rimDiameter,
    quantity: "toe",
  },
  {
    kind: "shock",
    label: "shock, eye to eye",
    dimension: "length",
    isFine: false,
    plusMinus: TAPE,
    from: same,
    quantity: "shockLength",
  },
  {
    kind: "half-shaft",
    label: "half shaft, joint to joint",
    dimension: "length",
    isFine: false,
    plusMinus: TAPE,
    from: same,
    quantity: "shaftLength",
  },
  {
    kind: "spline",
    label: "spline still in",
    dimension: "length",
    isFine: false,
    plusMinus: TAPE,
    from: same,
    quantity: "slipEngagement",
  },
  {
    kind: "strap",
    label: "strap, hole to hole",
    dimension: "length",
    isFine: false,
    plusMinus: TAPE,
    from: (slack, { car }) => (car.strap?.length ?? 0) - slack,
    quantity: "strapSlack",
  },
  {
    kind: "bump-stop",
    label: "bump stop, base to landing place",
    dimension: "length",
    isFine: false,
    plusMinus: TAPE,
    from: (gap, { car }) => gap + (car.bumpStop?.reach ?? 0),
    quantity: "bumpStopGap",
  },
];

/** The readings that this car's cards have, in order. */
export function cardReadings(corner: Corner): readonly CardReading[] {
  const quantities = new Map(quantitiesOf(corner).map((quantity) => [quantity.id, quantity]));
  return READINGS.flatMap(({ from, ...reading }): CardReading[] => {
    const quantity = quantities.get(reading.quantity);
    if (!quantity) return [];
    const read = ({ row }: Solved, of: Corner): number | null => {
      const value = quantity.read(row, of);
      return value === null ? null : from(value, of);
    };
    return [{ ...reading, read }];
  });
}

/** Of an angle finder held along a tube, two standard deviations, rad; common practice. */
const FINDER = 0.2 * DEGREE;

/**
 * Everything that can be logged: what is on the cards; each tube's angle by the angle finder, outer end up positive; and
 * where each point is, by tape off the floor and by plumb bob, at ride height.
 */
export const logReadings = (corner: Corner): readonly CardReading[] => [
  ...cardReadings(corner),
  ...corner.members.map((member) => angleReading(member)),
  ...cornerPlaces(corner.car).flatMap((place) => AXES.map((axis) => placeReading(place, axis))),
];

/** Readings that are taken with the wheel at ride height only. */
export const isOfRide = ({ kind }: Pick<CardReading, "kind">): boolean => PLACE_KINDS.some((each) => each === kind);

/** m */
const AT_RIDE = 1e-6;
const PLACE_KINDS = ["height", "out", "along"] as const;
/** What is read of a point in each direction. */
export const PLACE_KIND = { x: "along", y: "out", z: "height" } as const;
const PLACE_WORDS = {
  x: "forward of the mark",
  y: "out from the centreline",
  z: "height off the floor",
} as const;

/** In the design position, which is ride height, every point is where the document has it; elsewhere it is not read. */
const placeReading = (place: PointPlace, axis: Axis): CardReading => ({
  kind: PLACE_KIND[axis],
  of: place.label,
  label: `${place.label}, ${PLACE_WORDS[axis]}`,
  dimension: "length",
  isFine: false,
  // By tape off the floor; by plumb bob to a string or a chalk line.
  plusMinus: axis === "z" ? TAPE : 2 * TAPE,
  read: ({ state }, { car }) => (Math.abs(state[AT.travel]!) < AT_RIDE ? pointAt(car, place)[axis] : null),
});

const angleReading = ({ id, label }: Member): CardReading => ({
  kind: "angle",
  of: label,
  label: `${label}, angle, outer end up +`,
  dimension: "angle",
  isFine: false,
  plusMinus: FINDER,
  read: ({ state }, corner) => {
    const member = corner.members.find((each) => each.id === id);
    if (!member) return null;
    const [from, to] = placeMember(positionOf(corner, state), member);
    return Math.atan2(to.z - from.z, Math.hypot(to.x - from.x, to.y - from.y));
  },
});

/** What a card of this car says at a travel (m), SI; null where the linkage does not get there. */
export const cardValue = (corner: Corner, reading: CardReading, travel: number): number | null =>
  cardValues(corner, [{ card: reading, travel }])[0] ?? null;

/** Many at once, each travel solved once. `starts`: states near by, by travel. */
export function cardValues(
  corner: Corner,
  asked: readonly { readonly card: CardReading; readonly travel: number }[],
  starts: ReadonlyMap<number, MotionState> = new Map(),
): readonly (number | null)[] {
  const solved = new Map<number, Solved | null>();
  return asked.map(({ card, travel }) => {
    if (!solved.has(travel)) solved.set(travel, solveNear(corner, travel, starts.get(travel)));
    const found = solved.get(travel);
    return found ? card.read(found, corner) : null;
  });
}

/** Solved positions of a car at the travels asked for, for `cardValues` of cars that are alike. */
export function startsFor(
  corner: Corner,
  asked: readonly { readonly travel: number }[],
): ReadonlyMap<number, MotionState> {
  const travels = [...new Set(asked.map(({ travel }) => travel))];
  return new Map(
    travels.flatMap((travel) => {
      const state = solveNear(corner, travel, undefined)?.state;
      return state ? [[travel, state] as const] : [];
    }),
  );
}
