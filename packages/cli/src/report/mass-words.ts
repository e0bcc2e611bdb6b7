import { formatNumber, toUnit, type UnitSystem, unitOf } from "@armwright/engine";

/** A part's mass to a tenth: whole pounds are too coarse for a tube. kg in. */
export const massWords = (kg: number, units: UnitSystem): string =>
  `${formatNumber(toUnit(kg, "mass", units), 1)} ${unitOf("mass", units)}`;
