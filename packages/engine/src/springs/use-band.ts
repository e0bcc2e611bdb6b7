import type { Use } from "../car/car.ts";

/** Ride frequencies, Hz. */
export interface FrequencyBand {
  readonly from: number;
  readonly to: number;
}

/** Common practice of the trade, no published source; lists disagree by a tenth or two either way. */
export const USE_BANDS: Readonly<Record<Use, FrequencyBand>> = {
  dune: { from: 1.0, to: 1.3 },
  desert: { from: 0.9, to: 1.4 },
  trail: { from: 1.2, to: 1.6 },
};

/** Where nothing is said of the use: all of them together. */
export const ANY_USE: FrequencyBand = { from: 0.9, to: 1.6 };

export const bandOf = (use: Use | undefined): FrequencyBand => (use ? USE_BANDS[use] : ANY_USE);
