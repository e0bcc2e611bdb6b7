import { AT, NODE_SIZE } from "../../src/landing/model-places.ts";

/** A corner of the simplest kind for closed forms: one spring and damper straight over the wheel, no stops. SI. */
export interface PlainCorner {
  readonly sprung: number;
  readonly unsprung: number;
  readonly springRate: number;
  readonly damping: number;
  readonly tyreRate: number;
  readonly tyreDamping: number;
  readonly gravity: number;
}

/** Constants of such a corner: shock length 1 − z, the spring unloaded at z = −`preload`. */
export function plainConstants(corner: PlainCorner, preload = 0): Float64Array {
  const nodes = 9;
  const first = -2;
  const step = 0.5;
  const P = new Float64Array(AT.head + nodes * NODE_SIZE + 4);
  P[AT.sprung] = corner.sprung;
  P[AT.unsprung] = corner.unsprung;
  P[AT.gravity] = corner.gravity;
  P[AT.tyreRate] = corner.tyreRate;
  P[AT.tyreDamping] = corner.tyreDamping;
  P[AT.first] = first;
  P[AT.perMetre] = 1 / step;
  P[AT.nodes] = nodes;
  P[AT.table] = AT.head;
  for (let i = 0; i < nodes; i += 1) {
    P[AT.head + i * NODE_SIZE] = 10 - (first + i * step);
    P[AT.head + i * NODE_SIZE + 1] = -1;
  }
  P[AT.seat] = 10 + preload;
  P[AT.stretches + 2] = corner.springRate;
  P[AT.stretches + 3] = Number.MAX_VALUE;
  P[AT.stretches + 6] = Number.MAX_VALUE;
  const curve = AT.head + nodes * NODE_SIZE;
  for (const [points, place] of [
    [AT.bumpPoints, AT.bumpCurve],
    [AT.reboundPoints, AT.reboundCurve],
  ] as const) {
    P[points] = 1;
    P[place] = curve;
  }
  P[curve] = 1;
  P[curve + 1] = corner.damping;
  P[AT.stopReach] = -1;
  P[AT.strapLength] = -1;
  P[AT.shortest] = 0;
  P[AT.longest] = 100;
  return P;
}
