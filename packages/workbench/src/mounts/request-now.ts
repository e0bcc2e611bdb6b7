import { type Car, defaultRequest, type MountRequest, ownShock, type ShockOption, type Study } from "@armwright/engine";
import type { MountsBench, Wishes } from "./mounts-store.ts";

/** Everything that can be chosen: the car's own first, the shelf, and what a change asked for. */
export const shocksOf = (car: Car, { shelf, wanted }: Pick<MountsBench, "shelf" | "wanted">): readonly ShockOption[] =>
  [...[ownShock(car)], ...(shelf?.shocks ?? []), ...wanted].filter((shock) => shock !== null);

/** What is asked of the engine; null while no shock is chosen. */
export function requestNow(study: Study, state: Pick<MountsBench, "shelf" | "wanted"> & Wishes): MountRequest | null {
  const shocks = shocksOf(study.car, state).filter(({ name }) => state.chosen.includes(name));
  const { zones, reserve, requirements, step } = state;
  if (shocks.length === 0 || !zones) return null;
  return { shocks, ...zones, step, travel: state.travel ?? carTravel(study), reserve, requirements };
}

/** Where the car's own stops end the travel, m, whatever its present shock would allow. */
export function carTravel({ car, travel, corner }: Study): MountRequest["travel"] {
  // A stop by the shock is the very thing that is looked for: then by what the engine takes in its place.
  if (car.stops.bump.by === "shock" || car.stops.droop.by === "shock") return defaultRequest(corner, []).travel;
  return { droop: travel.droop.stop.travel, bump: travel.bump.stop.travel };
}
