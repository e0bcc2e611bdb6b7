import { axleAt, type Study } from "@armwright/engine";

/** The axle's table, with the right wheel alone after the left one where that side is its own. */
export function axleRows(left: Study, right: Study | null): Study["axle"] {
  if (!right) return left.axle;
  const { bump, droop } = right.travel;
  const alone = [droop.stop.travel, bump.stop.travel].map((rightTravel) => ({
    motion: "one-wheel" as const,
    leftTravel: 0,
    rightTravel,
    position: axleAt(left.corner, right.corner, 0, rightTravel),
  }));
  return [...left.axle, ...alone];
}
