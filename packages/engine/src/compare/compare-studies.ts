import type { Dimension } from "../car/car.ts";
import { solveAt } from "../cycle/corner.ts";
import type { Quantity } from "../cycle/quantities.ts";
import type { Finding } from "../findings/finding.ts";
import type { Direction } from "../limits/find-limits.ts";
import type { DirectionReport } from "../limits/travel-report.ts";
import type { Study } from "../study/study.ts";
import { type LinkageParts, linkageParts } from "./linkage-parts.ts";

/** What a change does: two studies laid side by side. `a` is the first (before), `b` the second (after). */
export interface Comparison {
  readonly stops: readonly StopDifference[];
  /** Every limit that either car meets, both directions, in order outward of the first car. */
  readonly limits: readonly LimitDifference[];
  /** Every quantity that both cars have, where they differ most over the travel that both can make. */
  readonly quantities: readonly QuantityDifference[];
  readonly findings: { readonly appeared: readonly Finding[]; readonly gone: readonly Finding[] };
  readonly parts: { readonly a: LinkageParts; readonly b: LinkageParts };
}

export interface StopDifference {
  readonly direction: Direction;
  /** Travel of the chosen stop, m. */
  readonly a: number;
  readonly b: number;
}

export interface LimitDifference {
  readonly direction: Direction;
  readonly id: string;
  readonly label: string;
  /** Travel at which it is met, m; null where it is not. */
  readonly a: number | null;
  readonly b: number | null;
  /** Whether a chosen stop keeps the wheel from it; a limit that is not met counts as kept from. */
  readonly isProtectedInA: boolean;
  readonly isProtectedInB: boolean;
}

export interface QuantityDifference {
  readonly id: string;
  readonly label: string;
  readonly dimension: Dimension;
  readonly signed: boolean;
  /** At ride height, in SI; null where it does not exist there. */
  readonly rideA: number | null;
  readonly rideB: number | null;
  /** Travel at which they differ most, m, and the values there. */
  readonly at: number;
  readonly a: number;
  readonly b: number;
}

/** Travels at which quantities are laid side by side. */
const STATIONS = 25;

export function compareStudies(a: Study, b: Study): Comparison {
  return {
    stops: (["bump", "droop"] as const).map((direction) => ({
      direction,
      a: a.travel[direction].stop.travel,
      b: b.travel[direction].stop.travel,
    })),
    limits: (["bump", "droop"] as const).flatMap((direction) =>
      compareLimits(direction, a.travel[direction], b.travel[direction]),
    ),
    quantities: compareQuantities(a, b),
    findings: { appeared: missingFrom(a.findings, b.findings), gone: missingFrom(b.findings, a.findings) },
    parts: { a: linkageParts(a), b: linkageParts(b) },
  };
}

function compareLimits(direction: Direction, a: DirectionReport, b: DirectionReport): LimitDifference[] {
  const all = new Map([...a.limits, ...b.limits].map(({ id, label }) => [id, label]));
  return [...all].map(([id, label]) => {
    const inA = a.limits.find((limit) => limit.id === id);
    const inB = b.limits.find((limit) => limit.id === id);
    return {
      direction,
      id,
      label,
      a: inA?.travel ?? null,
      b: inB?.travel ?? null,
      isProtectedInA: inA?.isProtected ?? true,
      isProtectedInB: inB?.isProtected ?? true,
    };
  });
}

function compareQuantities(a: Study, b: Study): QuantityDifference[] {
  const low = Math.max(a.travel.droop.stop.travel, b.travel.droop.stop.travel);
  const high = Math.min(a.travel.bump.stop.travel, b.travel.bump.stop.travel);
  const travels = Array.from({ length: STATIONS }, (_, i) => low + ((high - low) * i) / (STATIONS - 1));
  const rowsA = travels.map((travel) => solveAt(a.corner, travel)?.row);
  const rowsB = travels.map((travel) => solveAt(b.corner, travel)?.row);
  const ofB = new Map(b.quantities.map((quantity) => [quantity.id, quantity]));
  return a.quantities.flatMap((quantity): QuantityDifference[] => {
    const other = ofB.get(quantity.id);
    if (!other) return [];
    let most: { at: number; a: number; b: number } | null = null;
    travels.forEach((at, i) => {
      const va = readValue(a, quantity, rowsA[i]);
      const vb = readValue(b, other, rowsB[i]);
      if (va === null || vb === null) return;
      if (!most || Math.abs(vb - va) > Math.abs(most.b - most.a)) most = { at, a: va, b: vb };
    });
    if (!most) return [];
    const { id, label, dimension, signed } = quantity;
    const rideA = readValue(a, quantity, solveAt(a.corner, 0)?.row);
    const rideB = readValue(b, other, solveAt(b.corner, 0)?.row);
    return [{ id, label, dimension, signed, rideA, rideB, ...(most as { at: number; a: number; b: number }) }];
  });
}

const readValue = (study: Study, quantity: Quantity, row: Float64Array | undefined): number | null =>
  row ? quantity.read(row, study.corner) : null;

/** Findings of `later` that have no counterpart (same code, same place) in `earlier`. */
const missingFrom = (earlier: readonly Finding[], later: readonly Finding[]): readonly Finding[] =>
  later.filter(({ code, place, values }) =>
    earlier.every((other) => other.code !== code || other.place !== place || other.values["limit"] !== values["limit"]),
  );
