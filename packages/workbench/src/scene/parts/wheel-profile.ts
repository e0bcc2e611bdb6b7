import type { Wheel } from "@armwright/engine";
import { type ProfileSpot, type Run, run } from "../kit/shape.ts";
import { INCH } from "../kit/space.ts";

const TREAD = 0.55 * INCH;
const SIDEWALL = 0.36 * INCH;
const BEAD = 0.75 * INCH;
const SHEET = 0.2 * INCH;
const FLANGE = 0.55 * INCH;
const DISC = 0.32 * INCH;
const HUB_HOLE = 1.35 * INCH;
const HUB_FLAT = 3.3 * INCH;

/**
 * The tyre's section as a closed profile (radius, along the spin axis; m), walked with the rubber on the left. Outside it
 * is the rounded solid that clearances are measured to; wall thickness and bead are a usual tyre's.
 */
export function tyreRuns(wheel: Wheel): readonly Run[] {
  const { freeRadius: radius, shoulderRadius: shoulder } = wheel;
  const half = wheel.sectionWidth / 2;
  const bead = wheel.rimDiameter / 2;
  const seat = wheel.rimWidth / 2;
  const outside = side(bead, seat, radius, half, shoulder);
  const inside = side(bead, seat - BEAD, radius - TREAD, half - SIDEWALL, Math.max(0, shoulder - SIDEWALL));
  const flat = half - shoulder;
  const inFlat = half - SIDEWALL - Math.max(0, shoulder - SIDEWALL);
  return [
    { spots: mirrored(outside) },
    run([radius, -flat], [radius, flat]),
    { spots: [...outside].reverse() },
    run([bead, seat], [bead, seat - BEAD]),
    {
      spots: [...inside, [radius - TREAD, -inFlat], ...[...mirrored(inside)].reverse().slice(1)],
      isStartPlain: true,
      isEndPlain: true,
    },
    run([bead, -seat + BEAD], [bead, -seat]),
  ];
}

/** One sidewall from the bead out to where the tread begins. */
function side(bead: number, seat: number, radius: number, half: number, shoulder: number): ProfileSpot[] {
  const spots: ProfileSpot[] = [];
  const top = radius - shoulder;
  const bulge = bead + 0.25 * (top - bead);
  for (let i = 0; i <= 8; i += 1) {
    const t = i / 8;
    const r = (1 - t) * (1 - t) * bead + 2 * t * (1 - t) * bulge + t * t * top;
    const z = (1 - t) * (1 - t) * seat + 2 * t * (1 - t) * half + t * t * half;
    spots.push([r, z]);
  }
  for (let i = 1; i <= 6; i += 1) {
    const angle = (Math.PI / 2) * (i / 6);
    spots.push([top + shoulder * Math.sin(angle), half - shoulder + shoulder * Math.cos(angle)]);
  }
  return spots;
}

const mirrored = (spots: readonly ProfileSpot[]): ProfileSpot[] => spots.map(([r, z]) => [r, -z]);

/** The rim's barrel: bead seats, flanges and a well; its inside is the car's inside radius. */
export function barrelRuns(wheel: Wheel): readonly Run[] {
  const seat = wheel.rimDiameter / 2;
  const half = wheel.rimWidth / 2;
  const inside = Math.min(wheel.rimInsideRadius, seat - SHEET);
  const well = half * 0.62;
  const lip = half + SHEET;
  return [
    run([seat - SHEET, -lip], [seat + FLANGE, -lip]),
    run([seat + FLANGE, -lip], [seat + FLANGE, -half]),
    run(
      [seat + FLANGE, -half],
      [seat, -half],
      [inside + SHEET, -well],
      [inside + SHEET, well],
      [seat, half],
      [seat + FLANGE, half],
    ),
    run([seat + FLANGE, half], [seat + FLANGE, lip]),
    run([seat + FLANGE, lip], [seat - SHEET, lip]),
    {
      spots: [
        [seat - SHEET, lip],
        [seat - SHEET, half - SHEET],
        [inside, well],
        [inside, -well],
        [seat - SHEET, -half + SHEET],
        [seat - SHEET, -lip],
      ],
      isStartPlain: true,
      isEndPlain: true,
    },
  ];
}

/** The rim's centre: flat on the hub face, dished out to the barrel. */
export function discRuns(wheel: Wheel): readonly Run[] {
  const rim = Math.min(wheel.rimInsideRadius, wheel.rimDiameter / 2 - SHEET) + SHEET / 2;
  const face = wheel.offset;
  const out = face + Math.min(0.9 * INCH, Math.max(0, wheel.rimWidth / 2 - face - DISC));
  return [
    run([HUB_HOLE, face], [HUB_FLAT, face]),
    run([HUB_FLAT, face], [rim, out]),
    run([rim, out], [rim, out + DISC]),
    run([rim, out + DISC], [HUB_FLAT, face + DISC]),
    run([HUB_FLAT, face + DISC], [HUB_HOLE, face + DISC]),
    run([HUB_HOLE, face + DISC], [HUB_HOLE, face]),
  ];
}

/** Where nuts sit: their circle's radius and the height of their seats along the spin axis. */
export const nutSeat = (wheel: Wheel) => ({ radius: 2.5 * INCH, height: wheel.offset + DISC });

/** A closed profile as one outline. */
export const outlineOf = (runs: readonly Run[]): readonly ProfileSpot[] =>
  runs.flatMap(({ spots }) => spots.slice(0, -1));
