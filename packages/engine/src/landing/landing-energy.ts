import { type Corner, solveAt } from "../cycle/corner.ts";
import { ROW } from "../cycle/row.ts";
import { FAST, gasAt } from "../springs/gas-force.ts";
import { springStackAt } from "../springs/spring-stack.ts";
import { bumpStopAt, SOLID_RATE } from "../stops/bump-stop-law.ts";
import { strapAt } from "../stops/strap-stretch.ts";
import type { CornerModel } from "./corner-model.ts";
import { AT } from "./model-places.ts";

/**
 * Energy held between wheel and body at a travel, J: springs, gas, bump stop, strap, and the shock's ends, each in closed
 * form from its own law, on the linkage itself and not on the landing's table. Null outside the linkage's range.
 */
export function suspensionEnergy(corner: Corner, model: CornerModel, travel: number): number | null {
  const row = solveAt(corner, travel)?.row;
  if (!row) return null;
  const { car } = corner;
  const { stack, longest } = model.springs.shockSpring;
  const length = row[ROW.shockLength]!;
  const springs = springStackAt(stack, length);
  let energy = springs.energy;
  if (springs.isSolid) {
    const past = stack.preload + longest - length - stack.stretches[stack.stretches.length - 1]!.from;
    energy += (SOLID_RATE / 2) * past ** 2;
  }
  if (model.gas) energy += gasAt(model.gas, longest - length, FAST).energy;
  const past = Math.max(car.shock!.shortest - length, length - longest, 0);
  energy += (SOLID_RATE / 2) * past ** 2;
  if (model.stopLaw && car.bumpStop) energy += bumpStopAt(model.stopLaw, -row[ROW.bumpStopGap]!).energy;
  if (car.strap) energy += strapAt(car.strap, car.strap.length - row[ROW.strapSlack]!).energy;
  return energy;
}

/** Of a tyre pressed in by `pressed`, m (none while it is in the air), J. */
export const tyreEnergy = ({ constants }: CornerModel, pressed: number): number =>
  pressed > 0 ? (constants[AT.tyreRate]! / 2) * pressed ** 2 : 0;
