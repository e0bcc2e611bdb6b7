/** Every candidate that fits, one entry in each list, ordered by shock, lower and upper mount. */
export interface Feasible {
  readonly count: number;
  readonly shock: Uint32Array;
  /** Places in the grids, see `lowerPoints` and `upperAt`. */
  readonly lower: Uint32Array;
  readonly upper: Uint32Array;
  /** Numbers a candidate: SCORES. */
  readonly scores: Float64Array;
}
