import type { Car } from "../car/car.ts";
import type { ShockOption } from "./request.ts";

/** The name under which the car's own shock stands among those of a shelf. */
export const OWN_SHOCK = "the car's own";

/** The shock that is on the car, as one of a shelf, with what the document says of its eyes; null where it has none. */
export function ownShock({ shock }: Car): ShockOption | null {
  if (!shock) return null;
  const { shortest, longest, diameter, eyes } = shock;
  return { name: OWN_SHOCK, shortest, longest, bodyDiameter: diameter, springDiameter: 0, ...eyes };
}
