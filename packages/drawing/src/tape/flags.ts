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
 * Heights of rows that lie as near to where they belong as a pitch between them allows (least squares: rows that would
 * crowd are pooled about their mean), kept between `top` and `bottom`. `wanted` goes from the top down.
 */
export function fanned(wanted: readonly number[], pitch: number, top: number, bottom: number): readonly number[] {
  const pools: { sum: number; count: number }[] = [];
  wanted.forEach((height, index) => {
    pools.push({ sum: height - index * pitch, count: 1 });
    while (pools.length > 1) {
      const last = pools[pools.length - 1]!;
      const before = pools[pools.length - 2]!;
      if (before.sum / before.count <= last.sum / last.count) break;
      pools.splice(-2, 2, { sum: before.sum + last.sum, count: before.count + last.count });
    }
  });
  const high = Math.max(top, bottom - (wanted.length - 1) * pitch);
  const starts = pools.flatMap(({ sum, count }) => Array<number>(count).fill(sum / count));
  return starts.map((start, index) => Math.min(high, Math.max(top, start)) + index * pitch);
}

/** A flag with the row it stands in. */
export interface PlacedFlag {
  readonly flag: Flag;
  readonly height: number;
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
  const most = Math.max(1, Math.floor((bottom - top) / pitch) + 1);
  const kept = withoutFarthest(flags, most);
  const heights = fanned(
    kept.map(({ travel }) => heightOf(scale, travel)),
    pitch,
    top,
    bottom,
  );
  const left = options.words === false ? pennantLeft(scale) : rect.x;
  return kept.map((flag, index) => {
    const height = heights[index]!;
    const box = { x: left, y: height - pitch / 2, width: scale.blade.x - left, height: pitch };
    return { flag, height, box };
  });
}

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
export function flagParts(
  placed: readonly PlacedFlag[],
  scale: TapeScale,
  rect: Box,
  options: TapeOptions,
): Primitive[] {
  const { pen } = scale;
  const tip = scale.blade.x - TIP * pen;
  const valueRight = pennantLeft(scale) - 7 * pen;
  const valueWidth = Math.max(0, ...placed.map(({ flag }) => widthOf(flag.value, "text", pen)));
  const nameRight = valueRight - valueWidth - 10 * pen;
  return placed.map(({ flag, height }) => {
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
            text("tape", spot(nameRight, height + 4.5 * pen), shortened(flag.label, nameRight - rect.x, pen), {
              anchor: "end",
              bold,
              ink: held ? "hold" : bold ? "ink" : "ink-2",
            }),
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

/** A name cut with an ellipsis where it is too long. */
export function shortened(words: string, width: number, pen: number): string {
  if (widthOf(words, "label", pen) <= width) return words;
  for (let length = words.length - 1; length > 1; length -= 1) {
    const cut = `${words.slice(0, length).trimEnd()}…`;
    if (widthOf(cut, "label", pen) <= width) return cut;
  }
  return "";
}
