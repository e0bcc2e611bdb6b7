import type { Corner } from "../cycle/corner.ts";
import type { Quantity } from "../cycle/quantities.ts";
import { ROW } from "../cycle/row.ts";
import { distance } from "../geometry/vec3.ts";
import { shockSpringOf, type WheelSpringState, wheelSpringAt } from "./wheel-spring.ts";

/** What the springs do over the cycle; none where the shock carries no springs. Gas fast about the drawn ride height. */
export function springQuantities({ car }: Corner): readonly Quantity[] {
  const { shock } = car;
  const shockSpring = shockSpringOf(shock);
  if (!shock || !shockSpring) return [];
  const pace = { pace: "fast", restedAt: distance(shock.upper.point, shock.lower.point) } as const;
  // The quantities of one position are read one after the other: they share one answer.
  let last: WheelSpringState | undefined;
  const stateIn = (row: Float64Array): WheelSpringState => {
    const shockLength = row[ROW.shockLength]!;
    const motionRatio = row[ROW.motionRatio]!;
    const motionRatioSlope = row[ROW.motionRatioSlope]!;
    const isSame =
      last?.shockLength === shockLength &&
      last.motionRatio === motionRatio &&
      last.motionRatioSlope === motionRatioSlope;
    if (!last || !isSame)
      last = wheelSpringAt(shockSpring, { travel: 0, shockLength, motionRatio, motionRatioSlope }, pace);
    return last;
  };
  const reader =
    (read: (state: WheelSpringState) => number) =>
    (row: Float64Array): number | null => {
      const state = stateIn(row);
      // Springs that are solid have neither force nor rate that they could be known by.
      return state.springs.isSolid ? null : read(state);
    };
  const gas = shock.gas ? " and gas, fast about the drawn ride height" : "";
  return [
    {
      id: "springForce",
      label: "spring force along the shock",
      short: "spring",
      dimension: "force",
      signed: false,
      meaning: `Push of the springs${shock.gas ? " and the gas" : ""} on the shock's eyes; none where the springs are solid.`,
      basis: `springs in series with preload and crossover${gas}`,
      read: reader(({ shockForce }) => shockForce),
    },
    {
      id: "wheelForce",
      label: "spring force at the wheel",
      short: "at wheel",
      dimension: "force",
      signed: false,
      meaning: "What of the body's weight the springs carry with the wheel there.",
      basis: "shock force × motion ratio; by virtual work, at the wheel centre",
      read: reader(({ wheelForce }) => wheelForce),
    },
    {
      id: "wheelRate",
      label: "wheel rate",
      short: "wh rate",
      dimension: "rate",
      signed: false,
      meaning: "Change of that force by travel; the tyre is not in it.",
      basis: "rate along the shock × motion ratio² + shock force × change of the motion ratio by travel",
      read: reader(({ wheelRate }) => wheelRate),
    },
  ];
}
