import { applyOperations, type CarDocument, type Operation } from "@armwright/engine/document";

/** The plan with what was built otherwise, named so; the log stays with it. */
export const keptBeside = (plan: CarDocument, operations: readonly Operation[]): CarDocument => ({
  ...applyOperations(plan, operations),
  name: `${plan.name.replace(/ as built$/, "")} as built`,
});
