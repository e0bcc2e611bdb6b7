import type { Dimension } from "../car/car.ts";
import { type Corner, solveAt } from "../cycle/corner.ts";
import { quantitiesOf } from "../cycle/quantities.ts";
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
  /** What it reads, from the quantity's value, SI. */
  readonly from: (value: number, corner: Corner) => number;
  /** Id of the cycle quantity that it is made from. */
  readonly quantity: string;
}

const TAPE = INCH / 16;
const same = (value: number): number => value;

const READINGS: readonly CardReading[] = [
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
  const ids = new Set(quantitiesOf(corner).map(({ id }) => id));
  return READINGS.filter(({ quantity }) => ids.has(quantity));
}

/** What a card of this car says at a travel (m), SI; null where the linkage does not get there. */
export function cardValue(corner: Corner, reading: CardReading, travel: number): number | null {
  const solved = solveAt(corner, travel);
  const quantity = quantitiesOf(corner).find(({ id }) => id === reading.quantity);
  const value = solved && quantity ? quantity.read(solved.row, corner) : null;
  return value === null ? null : reading.from(value, corner);
}
