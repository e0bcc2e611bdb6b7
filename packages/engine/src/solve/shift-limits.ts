import type { Car } from "../car/car.ts";
import { keepOutSolid, movingSolids } from "../clearance/moving-solids.ts";
import { separation } from "../clearance/separation.ts";
import type { RoundedSolid, Solid } from "../clearance/shapes.ts";
import { makeCorner, solveAt } from "../cycle/corner.ts";
import { positionOf } from "../cycle/position.ts";
import { addScaled, FORWARD, type Vec3 } from "../geometry/vec3.ts";

/** A part of the corner against a thing on the body, while the whole corner is shifted fore and aft. */
export interface ShiftPair {
  readonly label: string;
  readonly isTyre: boolean;
  /** Least gap over the travels with the corner `shift` (m) farther forward, less what is wanted there. */
  spare(shift: number): number;
}

/**
 * Every part of the corner against every keep-out, at the given travels. With `gearboxStays` the shaft's inner joint stays
 * behind when the corner is shifted. `lead` goes before each label.
 */
export function shiftPairs(
  car: Car,
  travels: readonly number[],
  gearboxStays: boolean,
  lead = "",
): readonly ShiftPair[] {
  const corner = makeCorner(car);
  const looks = travels.flatMap((travel) => {
    const solved = solveAt(corner, travel);
    return solved ? [movingSolids(corner, positionOf(corner, solved.state))] : [];
  });
  type Part = { readonly label: string; readonly at: (look: number, shift: number) => RoundedSolid };
  const parts: Part[] = [
    { label: "tyre", at: (look) => looks[look]!.tyre },
    ...corner.members.map((member, i) => ({ label: member.label, at: (look: number) => looks[look]!.members[i]! })),
  ];
  if (car.shock) parts.push({ label: "shock", at: (look) => looks[look]!.shock! });
  if (car.driveshaft) {
    parts.push({
      label: "half shaft",
      at: (look, shift) => {
        const shaft = looks[look]!.shaft!;
        return gearboxStays ? { ...shaft, from: addScaled(shaft.from, FORWARD, -shift) } : shaft;
      },
    });
  }
  return parts.flatMap((part, index) =>
    car.keepOuts.map((keepOut): ShiftPair => {
      const solid = keepOutSolid(keepOut);
      return {
        label: `${lead}${part.label} to ${keepOut.name}`,
        isTyre: index === 0,
        // Seen from the corner, the body goes back.
        spare: (shift) => {
          const there = shifted(solid, -shift);
          const gaps = looks.map((_, look) => separation(part.at(look, shift), there).distance);
          return Math.min(...gaps) - keepOut.clearance;
        },
      };
    }),
  );
}

function shifted(solid: Solid, x: number): Solid {
  const move = (point: Vec3): Vec3 => addScaled(point, FORWARD, x);
  switch (solid.shape) {
    case "capsule":
      return { ...solid, from: move(solid.from), to: move(solid.to) };
    case "half-space":
      return { ...solid, point: move(solid.point) };
    default:
      return { ...solid, centre: move(solid.centre) };
  }
}

/** Steps of the walk, m: smaller than anything that could be passed over. */
const STEP = 0.004;

/**
 * Going out from 0 to `reach` (m, either sign): where the spare, positive at 0, first comes down to zero; or, where it is
 * negative at 0, where it first comes up to zero. Null where neither happens.
 */
export function firstCrossing(spare: (shift: number) => number, reach: number): number | null {
  const isFree = spare(0) >= 0;
  const count = Math.ceil(Math.abs(reach) / STEP);
  let before = 0;
  for (let i = 1; i <= count; i += 1) {
    const here = (reach * i) / count;
    if (spare(here) >= 0 !== isFree) return between(spare, isFree ? before : here, isFree ? here : before);
    before = here;
  }
  return null;
}

/** Bisection to the last free place, to a tenth of a micrometre. */
function between(spare: (shift: number) => number, free: number, past: number): number {
  let good = free;
  let bad = past;
  while (Math.abs(bad - good) > 1e-7) {
    const middle = (good + bad) / 2;
    if (spare(middle) >= 0) good = middle;
    else bad = middle;
  }
  return good;
}
