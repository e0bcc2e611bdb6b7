import type { LimitReport, ResolvedStop, Study } from "@armwright/engine";
import { PENNANT_WIDTH, pennant } from "../parts/pennant.ts";
import { polyline, spot } from "../path.ts";
import type { Box, Ink, Primitive } from "../primitive.ts";
import { group, line, text } from "../sketch.ts";
import { widthOf } from "../text-size.ts";
import { hardLimits } from "../trouble.ts";
import { travelReading } from "../words.ts";
import { heightOf, isOnTape, type TapeOptions, type TapeScale } from "./scale.ts";

/** One row beside the blade: a limit where it bites, or a chosen stop. */
export interface Flag {
  readonly id: string;
  readonly kind: "hard" | "made" | "stop";
  /** m */
  readonly travel: number;
  /** Place among the hard limits of its direction; 0 where it has none. */
  readonly order: number;
  readonly label: string;
  readonly value: string;
}

/** Rows stand at least this far apart, px. */
export const FLAG_PITCH = 21;

const STOP_WORDS: Readonly<Record<ResolvedStop["by"], string>> = {
  "bump-stop": "bump stop solid",
  strap: "strap",
  shock: "shock",
  travel: "aimed at",
};

/** Everything to be flagged, from the top of the tape down. */
export function flagsOf(study: Study, scale: TapeScale): readonly Flag[] {
  const flags: Flag[] = [];
  for (const direction of ["bump", "droop"] as const) {
    const { stop, limits } = study.travel[direction];
    const outward: Flag[] = [];
    const value = (travel: number): string => travelReading(travel, study.car.units);
    outward.push({
      id: `stops.${direction}`,
      kind: "stop",
      travel: stop.travel,
      order: 0,
      label: stop.works ? STOP_WORDS[stop.by] : `${STOP_WORDS[stop.by]}, too late`,
      value: value(stop.travel),
    });
    const hard = hardLimits(study, direction);
    for (const limit of limits) {
      if (!isOnTape(scale, limit.travel) || isStop(limit.id, stop)) continue;
      if (limit.pastAtRide && flags.some(({ id }) => id === limit.id)) continue;
      outward.push({
        id: limit.id,
        kind: limit.nature === "hard" ? "hard" : "made",
        travel: limit.travel,
        order: limit.nature === "hard" ? hard.indexOf(limit) + 1 : 0,
        label: limit.pastAtRide && limit.nature === "hard" ? `${nameOf(limit)}, past at ride` : nameOf(limit),
        value: value(limit.travel),
      });
    }
    const sorted = outward
      .filter(({ travel }) => isOnTape(scale, travel))
      .map((flag, index) => ({ flag, index }))
      .sort((a, b) => Math.abs(a.flag.travel) - Math.abs(b.flag.travel) || a.index - b.index)
      .map(({ flag }) => flag);
    if (direction === "bump") flags.push(...sorted.reverse());
    else flags.push(...sorted);
  }
  return flags;
}

/** What is short beside a pennant: a joint's limit is always an angle, a rod end says its place, a stop is seen to be one. */
const nameOf = ({ code, label }: LimitReport): string =>
  SHORT_NAME[code] ?? label.replace(/ angle$/, "").replace(/^rod end, /, "");

const SHORT_NAME: Partial<Record<LimitReport["code"], string>> = {
  "bump-stop-touched": "stop touched",
  "slip-engagement": "spline at least",
  underbody: "underbody",
};

/** A made stop that is the chosen one is shown as the stop's block already. */
const isStop = (id: string, { by, works }: ResolvedStop): boolean =>
  works && ((by === "bump-stop" && id === "bump-stop-solid") || (by === "strap" && id === "strap"));

/**
 * Heights of rows that lie as near to where they belong as their sizes allow (least squares: rows that would crowd are
 * pooled about their mean), kept between `top` and `bottom`. `wanted` goes from the top down; `size`: what each row takes,
 * or one for all.
 */
export function fanned(
  wanted: readonly number[],
  size: number | readonly number[],
  top: number,
  bottom: number,
): readonly number[] {
  const sizeOf = (index: number): number => (typeof size === "number" ? size : (size[index] ?? 0));
  // From the first row's middle to each one's, where they stand shoulder to shoulder.
  const offsets: number[] = [];
  for (let i = 0; i < wanted.length; i += 1) {
    offsets.push(i === 0 ? 0 : offsets[i - 1]! + (sizeOf(i - 1) + sizeOf(i)) / 2);
  }
  const pools: { sum: number; count: number }[] = [];
  wanted.forEach((height, index) => {
    pools.push({ sum: height - offsets[index]!, count: 1 });
    while (pools.length > 1) {
      const last = pools[pools.length - 1]!;
      const before = pools[pools.length - 2]!;
      if (before.sum / before.count <= last.sum / last.count) break;
      pools.splice(-2, 2, { sum: before.sum + last.sum, count: before.count + last.count });
    }
  });
  const high = Math.max(top, bottom - (offsets.at(-1) ?? 0));
  const starts = pools.flatMap(({ sum, count }) => Array<number>(count).fill(sum / count));
  return starts.map((start, index) => Math.min(high, Math.max(top, start)) + offsets[index]!);
}

/** A flag with the row it stands in. */
export interface PlacedFlag {
  readonly flag: Flag;
  /** Of the row's first line. */
  readonly height: number;
  /** Its name, in as many lines as it needs. */
  readonly lines: readonly string[];
  /** What its words and pennant cover. */
  readonly box: Box;
}

/** Rows of all flags; where the tape is too short for all, the ones farthest beyond the stops are left out. */
export function placeFlags(
  flags: readonly Flag[],
  scale: TapeScale,
  rect: Box,
  options: TapeOptions,
): readonly PlacedFlag[] {
  const { pen } = scale;
  const pitch = FLAG_PITCH * pen;
  const top = rect.y + 10 * pen;
  const bottom = rect.y + rect.height - 10 * pen;
  const room = nameRight(scale, flags) - rect.x;
  const kept = withoutFarthest(flags, Math.max(1, Math.floor((bottom - top) / pitch) + 1));
  const names = kept.map(({ label }) => (options.words === false ? [""] : wrapped(label, room, pen)));
  const tall = names.reduce((sum, lines) => sum + pitch + (lines.length - 1) * LINE * pen, 0);
  // Where there is no height for long names, all stand in one line each, cut in the middle.
  const rows = kept.map((flag, index) => {
    const lines = names[index]!;
    return {
      flag,
      lines: tall > bottom - top + pitch && lines.length > 1 ? [shortened(flag.label, room, pen)] : lines,
    };
  });
  const sizes = rows.map(({ lines }) => pitch + (lines.length - 1) * LINE * pen);
  const heights = fanned(
    rows.map(({ flag }) => heightOf(scale, flag.travel)),
    sizes,
    top + ((sizes[0] ?? pitch) - pitch) / 2,
    bottom - ((sizes.at(-1) ?? pitch) - pitch) / 2,
  );
  const left = options.words === false ? pennantLeft(scale) : rect.x;
  return rows.map(({ flag, lines }, index) => {
    const size = sizes[index]!;
    const y = heights[index]! - size / 2;
    const box = { x: left, y, width: scale.blade.x - left, height: size };
    return { flag, lines, height: y + pitch / 2, box };
  });
}

/** From one line of a name to the next, px. */
const LINE = 15;

function withoutFarthest(flags: readonly Flag[], most: number): readonly Flag[] {
  if (flags.length <= most) return flags;
  const ranked = [...flags].sort((a, b) => importance(a) - importance(b));
  const kept = new Set(ranked.slice(0, most));
  return flags.filter((flag) => kept.has(flag));
}

const importance = ({ kind, order }: Flag): number =>
  kind === "stop" ? 0 : kind === "hard" ? Math.max(order, 1) : 2.5;

const TIP = 22;
const pennantLeft = ({ blade, pen }: TapeScale): number => blade.x - (TIP + PENNANT_WIDTH) * pen;

/** Pennant, value, name and leader of each flag. */
export function flagParts(placed: readonly PlacedFlag[], scale: TapeScale, options: TapeOptions): Primitive[] {
  const { pen } = scale;
  const tip = scale.blade.x - TIP * pen;
  const valueRight = valuesRight(scale);
  const right = nameRight(
    scale,
    placed.map(({ flag }) => flag),
  );
  return placed.map(({ flag, height, lines }) => {
    const held = options.held === flag.id;
    const ink: Ink = flag.kind === "hard" ? "stop" : held ? "hold" : "ink";
    const bold = flag.order === 1 || flag.kind === "stop";
    const start = flag.kind === "hard" ? tip : valueRight + 4 * pen;
    const edge = heightOf(scale, flag.travel);
    const knee = scale.blade.x - 16 * pen;
    const words: Primitive[] =
      options.words === false
        ? []
        : [
            ...lines.map((words, index) =>
              text("tape", spot(right, height + (4.5 + index * LINE) * pen), words, {
                anchor: "end",
                bold,
                ink: held ? "hold" : bold ? "ink" : "ink-2",
              }),
            ),
            text("tape", spot(valueRight, height + 4.8 * pen), flag.value, {
              anchor: "end",
              size: "text",
              bold,
              ink: held ? "hold" : "ink",
            }),
          ];
    return group(
      "tape",
      [
        ...(options.words === false && flag.kind !== "hard"
          ? []
          : [
              line(
                "tape",
                polyline([
                  spot(start, height),
                  spot(knee, height),
                  spot(scale.blade.x - 6 * pen, edge),
                  spot(scale.blade.x, edge),
                ]),
                {
                  ink: flag.kind === "made" ? "ink-2" : ink,
                  weight: flag.kind === "made" ? "thin" : "ghost",
                },
              ),
            ]),
        ...(flag.kind === "hard" ? pennant("tape", spot(tip, height), flag.order, pen) : []),
        ...words,
      ],
      { meaning: flag.id, label: `${flag.label} at ${flag.value}` },
    );
  });
}

const valuesRight = (scale: TapeScale): number => pennantLeft(scale) - 7 * scale.pen;

/** Where names end: left of the widest value. */
const nameRight = (scale: TapeScale, flags: readonly Flag[]): number =>
  valuesRight(scale) - Math.max(0, ...flags.map(({ value }) => widthOf(value, "text", scale.pen))) - 10 * scale.pen;

/** A name in lines that fit the width, as bold as it may become; nothing of it is left out, since its end may say which part. */
export function wrapped(words: string, width: number, pen: number): readonly string[] {
  const lines: string[] = [];
  for (const word of words.split(" ")) {
    const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`;
    if (lines.length === 0 || widthOf(longer, "label", pen) * BOLDER > width) lines.push(word);
    else lines[lines.length - 1] = longer;
  }
  return lines;
}

const BOLDER = 1.05;

/** A name in one line: its beginning and its end, which tell the parts, and an ellipsis between them. */
export function shortened(words: string, width: number, pen: number): string {
  for (let left = words.length - 2; left >= 4; left -= 1) {
    const end = Math.floor(left * 0.4);
    const cut = `${words.slice(0, left - end).trimEnd()}…${words.slice(words.length - end).trimStart()}`;
    if (widthOf(cut, "label", pen) * BOLDER <= width) return cut;
  }
  return "";
}
