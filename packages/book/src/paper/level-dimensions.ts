import {
  type Box,
  type DimensionWish,
  makePlacement,
  type Primitive,
  placeDimension,
  type Spot,
} from "@armwright/drawing";
import { PEN } from "./leaf.ts";

/** A thing that lies level on the sheet: its middle line, and how far it reaches to either side of that, mm. */
interface Lying {
  readonly from: Spot;
  readonly to: Spot;
  readonly half: number;
}

/** Dimensions along a part that is drawn lying, not to scale: each where it finds room in the box, clear of the part. */
export function levelDimensions(
  wishes: readonly Omit<DimensionWish, "along">[],
  { from, to, half }: Lying,
  box: Box,
): Primitive[] {
  const room = { all: makePlacement(box), words: makePlacement(box), parts: makePlacement(box) };
  room.all.takeLine(from, to, half);
  return wishes.flatMap((wish) => placeDimension({ ...wish, along: "level" }, room, PEN) ?? []);
}
