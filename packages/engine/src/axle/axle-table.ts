import type { Corner } from "../cycle/corner.ts";
import { type AxlePosition, axleAt } from "./axle.ts";

/** How the two wheels move: together, against each other, or one of them alone. */
export type AxleMotion = "heave" | "roll" | "one-wheel";

export interface AxleRow {
  readonly motion: AxleMotion;
  /** m, bump positive. */
  readonly leftTravel: number;
  readonly rightTravel: number;
  /** Null where a linkage does not reach its travel. */
  readonly position: AxlePosition | null;
}

/** Rows in the order: heave from droop to bump, roll from right wheel up to left wheel up, left wheel alone. */
export type AxleTable = readonly AxleRow[];

/** Parts of the smaller stop's travel that roll is shown at; one wheel goes up by what the other goes down. */
const ROLL_PARTS = [-1, -0.75, -0.5, -0.25, 0.25, 0.5, 0.75, 1] as const;

/**
 * The axle in heave at droop, ride and bump; in roll at even travels as far as the nearer of both stops; and with the left
 * wheel at droop and at bump alone (the right one at ride). `bump` and `droop`: travels of the stops, m, droop negative.
 */
export function axleTable(left: Corner, right: Corner, bump: number, droop: number): AxleTable {
  const row = (motion: AxleMotion, leftTravel: number, rightTravel: number): AxleRow => ({
    motion,
    leftTravel,
    rightTravel,
    position: axleAt(left, right, leftTravel, rightTravel),
  });
  const even = Math.max(0, Math.min(bump, -droop));
  return [
    ...[droop, 0, bump].map((travel) => row("heave", travel, travel)),
    ...(even > 0 ? ROLL_PARTS : []).map((part) => row("roll", part * even, -part * even)),
    row("one-wheel", droop, 0),
    row("one-wheel", bump, 0),
  ];
}
