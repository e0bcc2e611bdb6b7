import type { Study } from "@armwright/engine";
import { type StepId, stepOfId } from "../steps/steps.ts";

/** The quantities charted now: those picked, else the step's own, filled up with the usual ones the car has. */
export function chartIds(study: Study, step: StepId, picked: readonly string[] | null): readonly string[] {
  const has = (id: string): boolean =>
    id.split("+").every((each) => study.quantities.some((quantity) => quantity.id === each));
  if (picked) return picked.filter(has).slice(0, MOST);
  const own = stepOfId(step).charts.filter(has);
  // Where a joint has its own chart, the pair does not need another.
  return [
    ...new Set([
      ...own,
      ...USUAL.filter((id) => has(id) && !(id.includes("+") && own.some((each) => id.includes(each)))),
    ]),
  ].slice(0, MOST);
}

const MOST = 5;
const USUAL: readonly string[] = [
  "camber",
  "toe",
  "motionRatio",
  "outerJoint+innerJoint",
  "plunge",
  "halfTrackChange",
  "wheelbaseChange",
];
