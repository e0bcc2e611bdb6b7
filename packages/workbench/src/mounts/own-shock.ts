import type { Car, ShockOption } from "@armwright/engine";

/** The name under which the car's own shock stands among those of a shelf. */
export const OWN = "the car's own";

/** The shock that is on the car, as one of a shelf. */
export function ownShock({ shock }: Car): ShockOption | null {
  if (!shock) return null;
  const { shortest, longest, diameter } = shock;
  return { name: OWN, shortest, longest, bodyDiameter: diameter, springDiameter: 0 };
}
