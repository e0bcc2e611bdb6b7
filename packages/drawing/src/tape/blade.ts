import type { Study } from "@armwright/engine";
import { polyline, rectangle, spot } from "../path.ts";
import type { Box, Ink, Primitive, Spot, TextPrimitive } from "../primitive.ts";
import { area, group, line, patch, stroke, text } from "../sketch.ts";
import { boxOfText, widthOf } from "../text-size.ts";
import { hardLimits } from "../trouble.ts";
import { reading } from "../words.ts";
import type { Flag } from "./flags.ts";
import { heightOf, isOnTape, marksBetween, type TapeOptions, type TapeScale } from "./scale.ts";

const BLOCK = 9;
const OVERHANG = 10;
/** Lengths of marks as shares of the blade's width, by rank: right edge, left edge. */
const RIGHT = [0.36, 0.24, 0.17, 0.1, 0.07];
const LEFT = [0.22, 0.15, 0.08];
/** The same where numerals are wide: the marks beside them give way. */
const RIGHT_SHORT = [0.12, 0.12, 0.12, 0.1, 0.07];
const LEFT_SHORT = [0.1, 0.1, 0.08];
/** Where a numeral's middle stands, as a share of the blade's width. */
const MIDDLE = 0.43;
const MIDDLE_WIDE = 0.5;

/** The blade with its torn ends, marks and numerals; what is out of reach hatched; limits and stops across it. */
export function bladeParts(
  study: Study,
  scale: TapeScale,
  flags: readonly Flag[],
  travel: number,
  options: TapeOptions,
): Primitive[] {
  return [
    area("tape", tornOutline(scale), { fill: "blade" }),
    ...outOfReach(study, scale),
    ...marks(study, scale),
    ...numerals(study, scale, flags, travel),
    ...limitLines(scale, flags),
    ...zeroLine(scale),
    ...stopBlocks(scale, flags, options),
  ];
}

function tornOutline({ blade: { x, width }, top, bottom, pen }: TapeScale) {
  const teeth = (y: number, way: 1 | -1): Spot[] =>
    [0, 0.25, 0.5, 0.75, 1].map((share, i) =>
      spot(x + share * width, y + way * (i % 2 === 1 ? -4 : i === 2 ? 3 : 0) * pen),
    );
  return polyline([...teeth(top, 1), ...teeth(bottom, -1).reverse()], true);
}

/** First hard limit both ways, m; null where there is none on the tape. */
export function reach(study: Study, scale: TapeScale): { readonly bump: number | null; readonly droop: number | null } {
  const first = (direction: "bump" | "droop"): number | null => {
    const limit = hardLimits(study, direction)[0];
    return limit && isOnTape(scale, limit.travel) ? limit.travel : null;
  };
  return { bump: first("bump"), droop: first("droop") };
}

/** Boxes beyond the first hard limits, over a width: for the blade and for every chart. */
export function outOfReachBoxes(study: Study, scale: TapeScale, x: number, width: number): Box[] {
  const { bump, droop } = reach(study, scale);
  const { top, bottom } = scale;
  const boxes: Box[] = [];
  if (bump !== null) boxes.push({ x, y: top, width, height: heightOf(scale, bump) - top });
  if (droop !== null) boxes.push({ x, y: heightOf(scale, droop), width, height: bottom - heightOf(scale, droop) });
  return boxes;
}

const outOfReach = (study: Study, scale: TapeScale): Primitive[] =>
  outOfReachBoxes(study, scale, scale.blade.x, scale.blade.width).map(({ x, y, width, height }) =>
    patch("tape", rectangle(x, y, width, height), { fill: "none", hatch: "out-of-reach" }),
  );

/** Whether numerals leave no room for long marks. */
function isWide(study: Study, scale: TapeScale): boolean {
  const widest = [scale.lowest, scale.highest].map((travel) =>
    widthOf(
      reading(
        Math.round(travel / scale.graduation.steps[0]!) * scale.graduation.steps[0]!,
        "length",
        study.car.units,
        true,
      ),
      "reading",
      scale.pen,
    ),
  );
  return Math.max(...widest) > 0.56 * scale.blade.width;
}

function marks(study: Study, scale: TapeScale): Primitive[] {
  const { blade, pen } = scale;
  const wide = isWide(study, scale);
  const [rights, lefts] = wide ? [RIGHT_SHORT, LEFT_SHORT] : [RIGHT, LEFT];
  const margin = 5 * pen;
  return marksBetween(scale.graduation, scale.lowest, scale.highest).flatMap(({ travel, rank }) => {
    const y = heightOf(scale, travel);
    if (y < scale.top + margin || y > scale.bottom - margin) return [];
    const weight = rank === 0 ? "visible" : "thin";
    const right = stroke(
      "tape",
      spot(blade.x + blade.width * (1 - (rights[rank] ?? 0.07)), y),
      spot(blade.x + blade.width, y),
      { weight },
    );
    const length = lefts[rank];
    return length === undefined
      ? [right]
      : [right, stroke("tape", spot(blade.x, y), spot(blade.x + blade.width * length, y), { weight })];
  });
}

/** Numerals between the marks; one that a line or block would touch gives way. */
export function numerals(study: Study, scale: TapeScale, flags: readonly Flag[], travel: number): TextPrimitive[] {
  const { blade, pen } = scale;
  const step = scale.graduation.steps[0]!;
  const taken = takenHeights(scale, flags, travel);
  const middle = isWide(study, scale) ? MIDDLE_WIDE : MIDDLE;
  return marksBetween({ steps: [step] }, scale.lowest, scale.highest).flatMap((mark) => {
    const y = heightOf(scale, mark.travel);
    const numeral = text(
      "tape",
      spot(blade.x + blade.width * middle, y + 6 * pen),
      reading(mark.travel, "length", study.car.units, true),
      {
        size: "reading",
        anchor: "middle",
        ink: "ink",
        halo: "blade",
      },
    );
    const box = boxOfText(numeral, pen);
    const inside = box.y > scale.top + 5 * pen && box.y + box.height < scale.bottom - 5 * pen;
    const free = taken.every(([from, to]) => box.y + box.height <= from || box.y >= to);
    return inside && free ? [numeral] : [];
  });
}

/** Spans of height across the blade that lines and blocks cover. */
export function takenHeights(
  scale: TapeScale,
  flags: readonly Flag[],
  travel: number,
): readonly (readonly [number, number])[] {
  const { pen } = scale;
  const around = (at: number, half: number) =>
    [heightOf(scale, at) - half * pen, heightOf(scale, at) + half * pen] as const;
  return [
    around(0, 1.3),
    around(travel, 1),
    ...flags.map((flag) => {
      if (flag.kind !== "stop") return around(flag.travel, flag.order === 1 ? 1.5 : 0.8);
      const y = heightOf(scale, flag.travel);
      return flag.travel >= 0 ? ([y, y + BLOCK * pen] as const) : ([y - BLOCK * pen, y] as const);
    }),
  ];
}

const limitLines = (scale: TapeScale, flags: readonly Flag[]): Primitive[] =>
  flags
    .filter(({ kind }) => kind !== "stop")
    .map(({ travel, kind, order, id }) => {
      const y = heightOf(scale, travel);
      const { x, width } = scale.blade;
      return stroke("tape", spot(x, y), spot(x + width, y), {
        ink: kind === "hard" ? "stop" : "ink-2",
        weight: order === 1 ? "outline" : kind === "hard" ? "visible" : "thin",
        meaning: id,
      });
    });

function zeroLine(scale: TapeScale): Primitive[] {
  if (!isOnTape(scale, 0)) return [];
  const { blade, pen } = scale;
  const y = heightOf(scale, 0);
  return [stroke("tape", spot(blade.x - 6 * pen, y), spot(blade.x + blade.width + 6 * pen, y), { weight: "outline" })];
}

/** A stop's block: its edge on the value, its body on the safe side, two grip lines on the overhang. */
function stopBlocks(scale: TapeScale, flags: readonly Flag[], options: TapeOptions): Primitive[] {
  const { blade, pen } = scale;
  return flags
    .filter(({ kind }) => kind === "stop")
    .map((flag) => {
      const held = options.held === flag.id;
      const ink: Ink = held ? "hold" : "ink";
      const edge = heightOf(scale, flag.travel);
      const y = flag.travel >= 0 ? edge : edge - BLOCK * pen;
      const x = blade.x - 5 * pen;
      const right = blade.x + blade.width + OVERHANG * pen;
      const grips = [0.36, 0.64].map((share) =>
        stroke(
          "tape",
          spot(right - 8 * pen, y + share * BLOCK * pen),
          spot(right - 1.5 * pen, y + share * BLOCK * pen),
          {
            ink: "paper",
            weight: "ghost",
          },
        ),
      );
      return group(
        "tape",
        [
          patch("tape", rectangle(x, y, right - x, BLOCK * pen), { fill: ink }),
          ...grips,
          ...(held ? bracket(scale, y) : []),
        ],
        {
          meaning: flag.id,
          label: `${flag.label} at ${flag.value}`,
        },
      );
    });
}

/** What is in the hand also has a bracket and an arrow up and down. */
function bracket({ blade, pen }: TapeScale, y: number): Primitive[] {
  const x = blade.x + blade.width + (OVERHANG + 6) * pen;
  const c = y + (BLOCK / 2) * pen;
  const style = { ink: "hold", weight: "curve" } as const;
  const arrow = x + 13 * pen;
  return [
    line(
      "tape",
      polyline([
        spot(x, c - 9 * pen),
        spot(x + 5 * pen, c - 9 * pen),
        spot(x + 5 * pen, c + 9 * pen),
        spot(x, c + 9 * pen),
      ]),
      style,
    ),
    line(
      "tape",
      polyline([spot(arrow - 4 * pen, c - 8 * pen), spot(arrow, c - 13 * pen), spot(arrow + 4 * pen, c - 8 * pen)]),
      style,
    ),
    line(
      "tape",
      polyline([spot(arrow - 4 * pen, c + 8 * pen), spot(arrow, c + 13 * pen), spot(arrow + 4 * pen, c + 8 * pen)]),
      style,
    ),
    stroke("tape", spot(arrow, c - 12 * pen), spot(arrow, c + 12 * pen), style),
  ];
}
