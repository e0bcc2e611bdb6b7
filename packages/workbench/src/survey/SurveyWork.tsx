import {
  type CarSurvey,
  sayCause,
  sayMirrored,
  sayReading,
  sayReadingValue,
  sayRemedy,
  saySettling,
  saySuspicion,
  sayUndetermined,
} from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { Reading } from "../words/Reading.tsx";
import { shownLength, tidy } from "../words/shown.ts";
import { ReadingEntry } from "./ReadingEntry.tsx";

/** What the readings say: which one is wrong, what cannot be told, where each point is and how sure that is. */
export function SurveyWork(): ReactNode {
  const survey = useBench(({ live, moving }) => (moving ? undefined : live.study?.car.survey));
  const units = useBench((state) => state.units);
  if (!survey) {
    return (
      <p>
        This car has no readings: its points are typed directly. A survey is a section of the document with points and
        readings (see the example Brittlebush); points of the car then take their place from it.
      </p>
    );
  }
  const { result } = survey;
  return (
    <section className="survey-work" aria-label="Survey">
      <p>
        {result.points.length} points, {survey.survey.readings.length} readings.{" "}
        {result.agreement?.isMisfit
          ? "The readings miss each other by more than their ± allows."
          : "The readings agree as well as their ± says."}
      </p>
      <Suspicions survey={survey} />
      {result.undetermined.map((each) => (
        <p key={sayUndetermined(survey.survey, each)} className="fault">
          {sayUndetermined(survey.survey, each)}. {sayRemedy(survey.survey, each)}
        </p>
      ))}
      {result.mirrored.map((each) => (
        <p key={sayMirrored(survey.survey, each)} className="fault">
          {sayMirrored(survey.survey, each)} {saySettling(survey.survey, each, units)}
        </p>
      ))}
      <h3>Where the points are</h3>
      <table className="compare-table">
        <thead>
          <tr>
            <th scope="col">point</th>
            <th scope="col">forward</th>
            <th scope="col">out</th>
            <th scope="col">up</th>
            <th scope="col">±</th>
          </tr>
        </thead>
        <tbody>
          {result.points.map(({ name, at, sd }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              {[at.x, at.y, at.z].map((value, axis) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: three axes in their order
                <td key={axis}>
                  <Reading text={shownLength(value, units)} />
                </td>
              ))}
              <td>
                <Reading text={shownLength(2 * Math.max(sd.x, sd.y, sd.z), units, { denominator: 32 })} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <h3>Readings</h3>
      <ul className="survey-readings">
        {survey.survey.readings.map((reading, index) => {
          const solved = result.readings[index];
          const number = solved?.numbers[0];
          return (
            <ReadingEntry
              // biome-ignore lint/suspicious/noArrayIndexKey: readings are told apart by their place only
              key={index}
              index={index}
              words={sayReading(survey.survey, reading)}
              says={number ? tidy(sayReadingValue(reading, number.adjusted, units)) : ""}
              isUsed={solved?.isUsed ?? false}
            />
          );
        })}
      </ul>
      <p className="small quiet">
        ± is two standard deviations, the largest of the three directions. The next best reading: npx armwright survey.
      </p>
    </section>
  );
}

function Suspicions({ survey }: { readonly survey: CarSurvey }): ReactNode {
  const units = useBench((state) => state.units);
  return survey.result.suspicions.map((each) => (
    <p key={each.reading} className="fault" role="status">
      {tidy(saySuspicion(survey.survey, each, units))}.{" "}
      {each.causes[0] && `Perhaps ${sayCause(each.causes[0], units)}. `}Take it again: it is not used until then.
    </p>
  ));
}
