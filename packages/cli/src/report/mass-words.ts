import { formatNumber, type UnitSystem } from "@armwright/engine";

const POUND = 0.45359237;

/** A part's mass to a tenth: whole pounds are too coarse for a tube. kg in. */
export const massWords = (kg: number, units: UnitSystem): string =>
  units === "metric" ? `${formatNumber(kg, 1)} kg` : `${formatNumber(kg / POUND, 1)} lb`;
