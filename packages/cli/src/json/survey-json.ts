import { type CarSurvey, nextReadings, type SurveyReading } from "@armwright/engine";
import { wishOf } from "../report/survey-next.ts";

/** Version of the form below. */
const SURVEY_FORM_VERSION = 1;

/** The survey as the text of a JSON file, in metres and radians; spreads are standard deviations. */
export function surveyJson(car: { readonly name: string }, { survey, result, solved, uses }: CarSurvey): string {
  const name = (point: number): string => survey.points[point]!.name;
  const named = (reading: SurveyReading) =>
    Object.fromEntries(
      Object.entries(reading).map(([key, value]) =>
        typeof value === "number" && REFERENCES.includes(key) ? [key, name(value)] : [key, value],
      ),
    );
  const whole = {
    armwrightSurvey: SURVEY_FORM_VERSION,
    units: "SI",
    car: car.name,
    status: result.status,
    points: result.points,
    covariance: result.covariance.map((row) => [...row]),
    uses,
    readings: survey.readings.map((reading, i) => ({ ...named(reading), ...result.readings[i]! })),
    degreesOfFreedom: result.degreesOfFreedom,
    sumOfSquares: result.sumOfSquares,
    scatter: result.scatter,
    agreement: result.agreement,
    falseAlarmRate: result.falseAlarmRate,
    suspicions: result.suspicions,
    undetermined: result.undetermined.map((each) => ({
      ...each,
      point: name(each.point),
      remedy: each.remedy && named(each.remedy),
    })),
    mirrored: result.mirrored.map((each) => ({
      ...each,
      points: each.points.map(({ point, other }) => ({ point: name(point), other })),
    })),
    next: nextReadings(survey, solved, wishOf({ survey, uses })).map((each) => ({
      ...each,
      reading: named(each.reading),
    })),
  };
  return `${JSON.stringify(whole, null, 2)}\n`;
}

const REFERENCES: readonly string[] = ["from", "to", "point", "above", "left", "right"];
