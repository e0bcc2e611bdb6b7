import type { CornerModel } from "./corner-model.ts";
import { OUT, suspensionForces, WORK_SIZE } from "./corner-rates.ts";
import { AT } from "./model-places.ts";
import type { CornerStart } from "./run-corner.ts";

/** At rest on even ground: body and wheel carried, by the forces that the landing uses. */
export function restStart(model: CornerModel): CornerStart {
  const { constants: P, sprungMass, unsprungMass, tyreRate } = model;
  const g = P[AT.gravity]!;
  const travel = travelWhere(model, sprungMass * g);
  const wheel = (-(sprungMass + unsprungMass) * g) / tyreRate;
  return { body: wheel - travel, bodySpeed: 0, wheel, wheelSpeed: 0 };
}

/** In free fall, the tyre `height` over the ground: springs against strap, nothing moving. */
export function hangingStart(model: CornerModel, height: number): CornerStart {
  return { body: height - travelWhere(model, 0), bodySpeed: 0, wheel: height, wheelSpeed: 0 };
}

/** Travel at which everything between wheel and body pushes with `force` at the wheel (N), by halving, m. */
export function travelWhere({ constants: P }: CornerModel, force: number): number {
  const out = new Float64Array(WORK_SIZE);
  let low = P[AT.first]!;
  let high = low + (P[AT.nodes]! - 1) / P[AT.perMetre]!;
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    suspensionForces(P, middle, 0, out);
    if (out[OUT.atWheel]! < force) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
