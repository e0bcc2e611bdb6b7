import type { Assumption } from "../car/car.ts";
import type { SurveyResult } from "./result.ts";
import type { SolvedSurvey } from "./solve-survey.ts";
import type { Survey } from "./survey.ts";

/** The survey of a car, solved, and the places of the document that take their coordinates from it. */
export interface CarSurvey {
  readonly survey: Survey;
  readonly result: SurveyResult;
  readonly solved: SolvedSurvey;
  readonly uses: readonly SurveyUse[];
  /** Uncertainties that the document left out. */
  readonly assumed: readonly Assumption[];
}

export interface SurveyUse {
  /** E.g. `linkage.lowerArm.innerFront`, `right.shock.upper`. */
  readonly path: string;
  /** Name of the survey's point. */
  readonly point: string;
}
