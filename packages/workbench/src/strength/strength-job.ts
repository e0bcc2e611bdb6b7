import { type StrengthStudy, study, studyStrength } from "@armwright/engine";
import { type CarDocument, readCarValue } from "@armwright/engine/document";
import type { Job } from "../jobs/job.ts";

export interface StrengthInput {
  readonly document: CarDocument;
  readonly side: "left" | "right";
}

/** What stands before other sizes and what would make it hold are found, which takes longer. */
export type StrengthSoFar = Omit<StrengthStudy, "alternatives" | "proposals" | "tried">;

/** A car's strength; null where no weight on the wheel is given. */
export const strengthJob: Job<StrengthInput, StrengthStudy | null, StrengthSoFar> = async (
  { document, side },
  { tell, pause },
) => {
  const reading = readCarValue(document);
  if (!reading.ok) throw new Error("the car has faults: mend them first");
  const car = side === "right" ? (reading.car.right ?? reading.car) : reading.car;
  const found = studyStrength(study(car));
  if (!found) return null;
  const { cases, forces, checks, arms, give, masses, notEntered } = found;
  tell({ cases, forces, checks, arms, give, masses, notEntered });
  await pause();
  const { alternatives } = found;
  await pause();
  const { proposals, tried } = found;
  return { cases, forces, checks, arms, give, masses, notEntered, alternatives, proposals, tried };
};
