/**
 * Places of a corner's constants in the one flat array that the landing kernel reads (SI): masses, tyre, springs,
 * damper, stop, strap, then the tables. One array, since the same numbers go to the C program of the benchmark.
 */
export const AT = {
  sprung: 0,
  unsprung: 1,
  gravity: 2,
  tyreRate: 3,
  tyreDamping: 4,
  /** Geometry table: first travel, nodes per metre, number of nodes, place of the first node. */
  first: 5,
  perMetre: 6,
  nodes: 7,
  table: 8,
  /** Spring stack: compression is this less the shock length; then three stretches of from, force, rate. */
  seat: 9,
  stretches: 10,
  /** Damper: number of points and place of the first, going in and coming out. */
  bumpPoints: 19,
  bumpCurve: 20,
  reboundPoints: 21,
  reboundCurve: 22,
  /** Bump stop: gap at which it is touched (−1: none), stroke, table nodes per metre, place, force and rate once solid. */
  stopReach: 23,
  stopStroke: 24,
  stopPerMetre: 25,
  stopTable: 26,
  stopSolid: 27,
  stopSolidRate: 28,
  /** Strap: length when taut (−1: none), number of points and place of (stretch m, pull N). */
  strapLength: 29,
  strapPoints: 30,
  strapCurve: 31,
  /** The shock's own ends and the rate of what it then meets. */
  shortest: 32,
  longest: 33,
  endRate: 34,
  /** Numbers before the tables. */
  head: 36,
} as const;

/** Numbers at a node: shock length, strap's holes apart, stop's gap, force of the gas, each with its slope by travel. */
export const NODE_SIZE = 8;
/** Straight pieces of the bump stop's curve. */
export const STOP_PIECES = 1024;
