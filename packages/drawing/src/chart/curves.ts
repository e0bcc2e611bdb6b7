import { type Cycle, type Quantity, rowAt, type Study } from "@armwright/engine";
import { circle, polyline, toward } from "../path.ts";
import type { Primitive, Spot } from "../primitive.ts";
import { area, line } from "../sketch.ts";

/** A quantity over travel; null where it does not exist. */
export interface Curve {
  readonly id: string;
  readonly points: readonly { readonly travel: number; readonly value: number | null }[];
}

/** The same quantities of any study, those that it has. */
export function curvesOf(study: Study, quantities: readonly Quantity[], cycle: Cycle): Curve[] {
  return quantities.flatMap(({ id }): Curve[] => {
    const quantity = study.quantities.find((own) => own.id === id);
    if (!quantity) return [];
    const points = Array.from(cycle.travels, (travel, index) => {
      const value = quantity.read(rowAt(cycle, index), study.corner);
      return { travel, value: value !== null && Number.isFinite(value) ? value : null };
    });
    return [{ id, points }];
  });
}

/** Where a travel and a value (SI) fall on the sheet. */
export type Place = (travel: number, value: number) => Spot;

/** A curve, broken where the quantity does not exist. */
export function curveLines(curve: Curve, place: Place, style: Parameters<typeof line>[2]): Primitive[] {
  const pieces: Spot[][] = [[]];
  for (const { travel, value } of curve.points) {
    if (value === null) pieces.push([]);
    else pieces[pieces.length - 1]!.push(place(travel, value));
  }
  return pieces
    .filter((piece) => piece.length > 1)
    .map((piece) => line("chart", polyline(piece), { ...style, meaning: curve.id }));
}

/** An open red ring where a curve meets its limit. */
export function bites(curves: readonly Curve[], limits: readonly number[], place: Place, pen: number): Primitive[] {
  return curves.flatMap(({ points }) =>
    limits.flatMap((limit) =>
      points.flatMap((point, index): Primitive[] => {
        const next = points[index + 1];
        if (!next || point.value === null || next.value === null) return [];
        if (point.value < limit === next.value < limit) return [];
        const share = (limit - point.value) / (next.value - point.value);
        const at = toward(place(point.travel, point.value), place(next.travel, next.value), share);
        return [area("chart", circle(at, 5 * pen), { ink: "stop", weight: "curve" })];
      }),
    ),
  );
}
