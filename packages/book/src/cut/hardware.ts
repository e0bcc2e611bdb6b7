import { type Car, formatLength, formatNumber, INCH, type RodEnd, type UnitSystem } from "@armwright/engine";
import type { TubeEnd, TubePiece } from "./tube-piece.ts";

/** A bought part, both sides of the car together. */
export interface HardwareLine {
  readonly count: number;
  readonly name: string;
  readonly size: string;
  readonly where: string;
  /** What to look at before it is ordered; empty where nothing. */
  readonly note: string;
}

/**
 * Width of the ball of common inch rod ends by bore, in: SAE AS81935/1, sizes −08 to −16. Only these are told; others are to
 * be measured.
 */
const BALL_WIDTHS: readonly (readonly [bore: number, width: number])[] = [
  [0.5, 0.625],
  [0.625, 0.75],
  [0.75, 0.875],
  [1, 1.375],
];

/** Rod ends, bungs, jam nuts and bolts for both sides, as a list to order by; equal ones are counted together. */
export function hardware(car: Car, pieces: readonly TubePiece[]): readonly HardwareLine[] {
  const lines: HardwareLine[] = [];
  for (const end of car.rodEnds) {
    const thread = threadWords(end, car.units);
    lines.push(
      {
        count: 2,
        name: `rod end, ${end.hand} hand`,
        size: thread,
        where: end.pivot,
        note: end.misalignmentLimit === undefined ? "its tilt limit is not entered" : "",
      },
      { count: 2, name: `jam nut, ${end.hand} hand`, size: thread, where: end.pivot, note: "" },
    );
  }
  for (const piece of pieces) for (const end of [piece.from, piece.to]) lines.push(...bungLine(end, piece, car));
  for (const end of car.rodEnds) lines.push(boltLine(end, car));
  return gathered(lines);
}

function bungLine(end: TubeEnd, { diameter, wall }: TubePiece, { rodEnds, units }: Car): HardwareLine[] {
  if (end.kind !== "bung") return [];
  const rodEnd = rodEnds.find(({ pivot }) => pivot === end.pivot);
  return [
    {
      count: 2,
      name: `bung, ${end.hand} hand`,
      size: `${rodEnd ? threadWords(rodEnd, units) : "?"} for ${tubeWords(diameter, wall, units)}`,
      where: end.pivot,
      note: "",
    },
  ];
}

function boltLine({ pivot, threadDiameter }: RodEnd, { strength, units }: Car): HardwareLine {
  const bolt = strength?.bolts[pivot] ?? strength?.bolts["all"];
  const tab = strength?.tabs[pivot] ?? strength?.tabs["all"];
  const bore = bolt?.thread.diameter ?? threadDiameter;
  const width = bore === undefined ? undefined : BALL_WIDTHS.find(([size]) => Math.abs(size * INCH - bore) < 1e-5)?.[1];
  const grip = tab && width !== undefined ? tab.count * tab.thickness + width * INCH : undefined;
  return {
    count: 2,
    name: bolt ? `bolt, grade ${bolt.grade}, with nut and washers` : "bolt with nut and washers",
    size: bore === undefined ? "not entered" : diameterWords(bore, units),
    where: pivot,
    note:
      grip === undefined
        ? "grip: both tabs, joint and spacers; measure before ordering"
        : `grip ${formatLength(grip, units)} without spacers; no thread in the tabs`,
  };
}

/** `3/4-16`, `M16 × 1.5`; what is not known is said. */
export function threadWords(
  { threadDiameter, pitch }: Pick<RodEnd, "threadDiameter" | "pitch">,
  units: UnitSystem,
): string {
  if (threadDiameter === undefined || pitch === undefined) return "thread not entered";
  const turns = INCH / pitch;
  const isInch = Math.abs(turns - Math.round(turns)) < 1e-6;
  return isInch
    ? `${formatLength(threadDiameter, "inch-pound")}-${Math.round(turns)}`
    : `M${formatNumber(threadDiameter * 1000, 0)} × ${trimmed(pitch * 1000)}${units === "metric" ? "" : " metric"}`;
}

/** `1 1/2 × .120` in inches, `45 × 2.6` in millimetres. */
export const tubeWords = (diameter: number, wall: number, units: UnitSystem): string =>
  units === "metric"
    ? `${trimmed(diameter * 1000)} × ${trimmed(wall * 1000)}`
    : `${formatLength(diameter, units)} × ${formatNumber(wall / INCH, 3).replace(/^0/, "")}`;

const diameterWords = (metres: number, units: UnitSystem): string => {
  const sixteenths = metres / (INCH / 16);
  return Math.abs(sixteenths - Math.round(sixteenths)) < 1e-6
    ? `${formatLength(metres, "inch-pound")} in`
    : `${trimmed(metres * 1000)} mm${units === "metric" ? "" : " metric"}`;
};

const trimmed = (value: number): string => String(Number(value.toFixed(2)));

function gathered(lines: readonly HardwareLine[]): HardwareLine[] {
  const found = new Map<string, HardwareLine>();
  for (const line of lines) {
    const key = [line.name, line.size, line.note].join("|");
    const before = found.get(key);
    found.set(
      key,
      before ? { ...before, count: before.count + line.count, where: `${before.where}, ${line.where}` } : line,
    );
  }
  return [...found.values()].sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
}
