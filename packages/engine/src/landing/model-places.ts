/**
 * Places of a corner's constants in the one flat array that the landing kernel reads (SI): masses, tyre, springs, gas,
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
  /** Gas: absolute pressure and volume with the shock at `gasFrom` long; rod area (0: no gas); air outside. */
  gasPressure: 19,
  gasVolume: 20,
  gasArea: 21,
  gasOutside: 22,
  gasFrom: 23,
  /** Damper: number of points and place of the first, going in and coming out. */
  bumpPoints: 24,
  bumpCurve: 25,
  reboundPoints: 26,
  reboundCurve: 27,
  /** Bump stop: gap at which it is touched (−1: none), stroke, table nodes per metre, place, force and rate once solid. */
  stopReach: 28,
  stopStroke: 29,
  stopPerMetre: 30,
  stopTable: 31,
  stopSolid: 32,
  stopSolidRate: 33,
  /** Strap: length when taut (−1: none), number of points and place of (stretch m, pull N). */
  strapLength: 34,
  strapPoints: 35,
  strapCurve: 36,
  /** The shock's own ends and the rate of what it then meets. */
  shortest: 37,
  longest: 38,
  endRate: 39,
  /** Numbers before the tables. */
  head: 40,
} as const;

/** Numbers at a node of the geometry table: shock length, strap's holes apart, stop's gap, each with its slope by travel. */
export const NODE_SIZE = 6;
/** Straight pieces of the bump stop's curve. */
export const STOP_PIECES = 1024;
