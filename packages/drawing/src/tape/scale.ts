import { INCH, MILLIMETRE, type Study, type UnitSystem } from "@armwright/engine";
import type { Box } from "../primitive.ts";

/** The one height scale that tape and charts share: travel (m, bump up) against sheet height. */
export interface TapeScale {
  /** The blade's ends on the sheet and the travels there. */
  readonly top: number;
  readonly bottom: number;
  readonly highest: number;
  readonly lowest: number;
  /** Sheet units a metre. */
  readonly scale: number;
  readonly blade: { readonly x: number; readonly width: number };
  readonly graduation: Graduation;
  readonly pen: number;
}

/** How the blade is marked: a numeral every `steps[0]` (m), finer marks at the others, each a whole part of the one before. */
export interface Graduation {
  readonly steps: readonly number[];
}

export interface TapeOptions {
  /** Sheet units a px: 1 on screen. */
  readonly pen?: number;
  /** Widths in px. */
  readonly bladeWidth?: number;
  /** The loupe beside the marker, on unless said. */
  readonly loupe?: boolean;
  /** Names and values beside the pennants, on unless said. */
  readonly words?: boolean;
  /** `travel`, `stops.bump` or `stops.droop` while it is in the hand. */
  readonly held?: string;
  /** Travels at the blade's ends, m, where they are not to follow from the study. */
  readonly range?: { readonly lowest: number; readonly highest: number };
}

/** Beyond the last flag the blade goes on by this much, m. */
const BEYOND = 0.8 * INCH;
/** Limits farther beyond the chosen stop than this share of its travel, and than this (m), are not shown. */
const FAR_SHARE = 0.35;
const FAR = 2.5 * INCH;
/** Numerals stand at least this far apart, finest marks this, px. */
const NUMERAL_PITCH = 21;
const MARK_PITCH = 3.2;
const HEAD = 30;
const FOOT = 8;

/** Where travel falls on the sheet. `rect` is the room for the whole tape with its flags. */
export function tapeScale(study: Study, rect: Box, options: TapeOptions = {}): TapeScale {
  const pen = options.pen ?? 1;
  const highest = options.range?.highest ?? shownEnd(study, "bump");
  const lowest = options.range?.lowest ?? -shownEnd(study, "droop");
  const top = rect.y + HEAD * pen;
  const bottom = Math.max(rect.y + rect.height - FOOT * pen, top + pen);
  const scale = (bottom - top) / Math.max(highest - lowest, 1e-6);
  const width = (options.bladeWidth ?? 56) * pen;
  const right = (options.loupe === false ? 24 : 98) * pen;
  return {
    top,
    bottom,
    highest,
    lowest,
    scale,
    blade: { x: rect.x + rect.width - right - width, width },
    graduation: graduationOf(scale / pen, study.car.units),
    pen,
  };
}

export const heightOf = (scale: TapeScale, travel: number): number =>
  scale.top + (scale.highest - travel) * scale.scale;
export const travelAt = (scale: TapeScale, height: number): number =>
  scale.highest - (height - scale.top) / scale.scale;
/** The nearest travel that is on the blade. */
export const onBlade = (scale: TapeScale, travel: number): number =>
  Math.min(scale.highest, Math.max(scale.lowest, travel));

/** How far the tape reaches in one direction, m, positive: past the chosen stop and the limits near it. */
function shownEnd(study: Study, direction: "bump" | "droop"): number {
  const { stop, limits } = study.travel[direction];
  const at = Math.abs(stop.travel);
  const near = Math.max(at * (1 + FAR_SHARE), at + FAR);
  const shown = limits.map(({ travel }) => Math.abs(travel)).filter((travel) => travel <= near);
  return Math.max(at, ...shown, INCH) + BEYOND;
}

/** Whether a limit is near enough to be flagged. */
export const isOnTape = (scale: TapeScale, travel: number): boolean => travel < scale.highest && travel > scale.lowest;

const STEPS: Readonly<
  Record<UnitSystem, { readonly unit: number; readonly numerals: readonly number[]; readonly marks: readonly number[] }>
> = {
  "inch-pound": { unit: INCH, numerals: [1, 2, 4, 8], marks: [4, 2, 1, 1 / 2, 1 / 4, 1 / 8, 1 / 16] },
  metric: { unit: MILLIMETRE, numerals: [10, 20, 50, 100, 200], marks: [100, 50, 10, 5, 1] },
};

/** Marks that can be told apart at this scale (px a metre), as a tape of that unit system has them. */
export function graduationOf(pxPerMetre: number, system: UnitSystem): Graduation {
  const { unit, numerals, marks } = STEPS[system];
  const px = (step: number): number => step * unit * pxPerMetre;
  const numeral = numerals.find((step) => px(step) >= NUMERAL_PITCH) ?? numerals[numerals.length - 1]!;
  const steps = [numeral];
  for (const mark of marks) {
    const last = steps[steps.length - 1]!;
    const parts = last / mark;
    if (mark < last && px(mark) >= MARK_PITCH && Math.abs(parts - Math.round(parts)) < 1e-9) steps.push(mark);
  }
  return { steps: steps.map((step) => step * unit) };
}

/** Every mark between two travels: where, and how coarse (0 is a numeral's). */
export function marksBetween(
  { steps }: Graduation,
  lowest: number,
  highest: number,
): readonly { readonly travel: number; readonly rank: number }[] {
  const finest = steps[steps.length - 1]!;
  const parts = steps.map((step) => Math.round(step / finest));
  const from = Math.ceil(lowest / finest - 1e-9);
  const to = Math.floor(highest / finest + 1e-9);
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => {
    const count = from + i;
    return { travel: count * finest, rank: parts.findIndex((part) => count % part === 0) };
  });
}
