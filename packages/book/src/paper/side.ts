import { line, type Primitive, polyline, type Spot, spot, text } from "@armwright/drawing";
import type { Vec3 } from "@armwright/engine";

/** From where a part is seen, and which way is which on the sheet; both numbers in m. */
export interface Side {
  readonly title: string;
  /** To the right on the sheet. */
  readonly across: (point: Vec3) => number;
  /** Up on the sheet. */
  readonly up: (point: Vec3) => number;
  /** Away from the eye. */
  readonly depth: (point: Vec3) => number;
  /** The word on the level arrow, whether it points to the left or to the right, and the word on the upright one. */
  readonly level: "OUT" | "FRONT";
  readonly toward: "left" | "right";
  readonly top: "UP" | "FRONT";
}

export const FROM_ABOVE: Side = {
  title: "from above",
  across: ({ y }) => -y,
  up: ({ x }) => x,
  depth: ({ z }) => -z,
  level: "OUT",
  toward: "left",
  top: "FRONT",
};
export const FROM_BEHIND: Side = {
  title: "from behind",
  across: ({ y }) => -y,
  up: ({ z }) => z,
  depth: ({ x }) => x,
  level: "OUT",
  toward: "left",
  top: "UP",
};
/** From the wheel's side, looking at the car. */
export const FROM_THE_WHEEL: Side = {
  title: "from the wheel",
  across: ({ x }) => -x,
  up: ({ z }) => z,
  depth: ({ y }) => -y,
  level: "FRONT",
  toward: "left",
  top: "UP",
};

/** The same view of the right side's part: its mirror image. */
export const onTheRight = (side: Side): Side => ({ ...side, across: (point) => -side.across(point), toward: "right" });

/** Which way is which on the sheet, in a lower corner of the view. */
export const norths = (side: Side, left: number, bottom: number): Primitive[] => [
  ...arrow(
    side.toward === "left" ? spot(left + 10, bottom - 2) : spot(left + 2, bottom - 2),
    spot(side.toward === "left" ? -1 : 1, 0),
    side.level,
  ),
  ...arrow(spot(left + 1.5, bottom - 8), spot(0, -1), side.top),
];

/** A north of the view: a short arrow with its word. */
function arrow(from: Spot, heading: Spot, word: string): Primitive[] {
  const length = 7;
  const tip = spot(from.x + heading.x * length, from.y + heading.y * length);
  const side = spot(-heading.y, heading.x);
  const barb = (way: 1 | -1): Spot =>
    spot(tip.x - heading.x * 2.2 + side.x * 0.8 * way, tip.y - heading.y * 2.2 + side.y * 0.8 * way);
  return [
    line("north", polyline([from, tip]), { weight: "thin" }),
    line("north", polyline([barb(1), tip, barb(-1)]), { weight: "thin" }),
    heading.x === 0
      ? text("north", spot(tip.x + 1.6, tip.y + 3), word, { ink: "ink", bold: true })
      : text("north", spot(Math.max(from.x, tip.x) + 1.2, from.y + 1.2), word, { ink: "ink", bold: true }),
  ];
}
