import type { KeepOutBox } from "../car/car.ts";
import { add, addScaled, cross, subtract, type Vec3, vec } from "../geometry/vec3.ts";
import type { Notch } from "./notch.ts";

/**
 * What is left of a box when the notch is cut out, widened by `more` (m) on every side: as few as one and as many as six
 * boxes, each named after the box and the side on which it stands. Empty where nothing is left.
 */
export function notchedBox(
  box: KeepOutBox,
  notch: Pick<Notch, "from" | "to">,
  more = 0,
  called = "the notch",
): readonly KeepOutBox[] {
  const halves = [box.half.x, box.half.y, box.half.z];
  const from = [notch.from.x, notch.from.y, notch.from.z].map((each, n) => Math.max(-halves[n]!, each - more));
  const to = [notch.to.x, notch.to.y, notch.to.z].map((each, n) => Math.min(halves[n]!, each + more));
  const axes = [box.axisX, box.axisY, cross(box.axisX, box.axisY)];
  const low = halves.map((half) => -half);
  const high = [...halves];
  const pieces: KeepOutBox[] = [];
  const put = (words: string, a: readonly number[], b: readonly number[]): void => {
    const size = a.map((each, n) => b[n]! - each);
    if (size.some((each) => each < LEAST)) return;
    const centre = axes.reduce((sum, axis, n) => addScaled(sum, axis, 0.5 * (a[n]! + b[n]!)), box.centre);
    const half = { x: size[0]! / 2, y: size[1]! / 2, z: size[2]! / 2 };
    pieces.push({ ...box, name: `${box.name}, ${words} ${called}`, centre, half });
  };
  // One axis after the other: what lies beyond the notch is cut off, the rest goes on.
  for (const [n, before, after] of SIDES) {
    put(before, low, high.with(n, from[n]!));
    put(after, low.with(n, to[n]!), high);
    low[n] = from[n]!;
    high[n] = to[n]!;
  }
  return pieces;
}

/**
 * The same for a car that is alike on both sides: the right shock's notch too, where the box reaches over the centreline and is
 * not turned (a turned one is cut on the left only).
 */
export function notchedBothSides(box: KeepOutBox, notch: Notch, more = 0): readonly KeepOutBox[] {
  const left = notchedBox(box, notch, more);
  const isStraight = Math.abs(box.axisX.x) === 1 && Math.abs(box.axisY.y) === 1;
  if (!isStraight || box.centre.y - box.half.y >= 0) return left;
  const from = add(notch.from, box.centre);
  const to = add(notch.to, box.centre);
  const mirror = { from: vec(from.x, -to.y, from.z), to: vec(to.x, -from.y, to.z) };
  return left.flatMap((piece) => {
    const local = { from: subtract(mirror.from, piece.centre), to: subtract(mirror.to, piece.centre) };
    return reaches(piece.half, local, more) ? notchedBox(piece, local, more, "the right notch") : [piece];
  });
}

const reaches = (half: Vec3, { from, to }: Pick<Notch, "from" | "to">, more: number): boolean =>
  (["x", "y", "z"] as const).every((k) => from[k] - more < half[k] && to[k] + more > -half[k]);

/** Pieces thinner than this are left off, m. */
const LEAST = 0.001;

const SIDES = [
  [1, "inboard of", "outboard of"],
  [0, "behind", "ahead of"],
  [2, "below", "above"],
] as const;
