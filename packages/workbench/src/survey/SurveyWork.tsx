import "../styles/survey.css";
import { type ReactNode, useEffect, useState } from "react";
import { useBench } from "../app/use-bench.ts";
import { laidOver } from "../board/laid-over.ts";
import { edit, showPanel } from "../store/bench.ts";
import { plusMinusLength } from "../words/plus-minus.ts";
import { Reading } from "../words/Reading.tsx";
import { ENLARGED } from "./ellipsoids.ts";
import { NewPoint } from "./NewPoint.tsx";
import { NextReading } from "./NextReading.tsx";
import { PointSources } from "./PointSources.tsx";
import { PointsTable } from "./PointsTable.tsx";
import { Problems } from "./Problems.tsx";
import { ReadingsList } from "./ReadingsList.tsx";
import { SurveyOver } from "./SurveyOver.tsx";
import { isPutOff, putPoint } from "./survey-document.ts";
import { showSurveyPoint, showSurveyResult, useSurveyShown } from "./survey-shown.ts";
import { useSurvey } from "./use-survey.ts";

/** What the readings say first: what is wrong, what is open, how sure it is; then what to read next, points, readings. */
export function SurveyWork(): ReactNode {
  const car = useSurvey();
  const section = useBench(({ document }) => document?.survey);
  const units = useBench((state) => state.units);
  const chosen = useSurveyShown((state) => state.point);
  useEffect(() => {
    // What a reading is entered with is at hand when it is asked for.
    void import("./ReadingPanel.tsx");
    laidOver.setState({ Over: SurveyOver });
    return () => {
      laidOver.setState({ Over: null });
      showSurveyPoint(null);
      showSurveyResult(null);
    };
  }, []);
  useEffect(() => showSurveyResult(car?.result ?? null), [car]);
  if (!section) return <NoSurvey />;
  if (!car) return <p className="quiet">The survey cannot be read yet: mend its entries first.</p>;
  const { survey, result } = car;
  const taken = section.readings.filter((entry) => !isPutOff(entry)).length;
  const off = section.readings.length - taken;
  const sds = result.points.filter(({ isUndetermined }) => !isUndetermined).map(({ sd }) => Math.max(sd.x, sd.y, sd.z));
  const unit = units === "metric" ? "mm" : "in";
  const alone = survey.readings.filter((_, index) =>
    result.readings[index]?.numbers.some(({ redundancy }) => redundancy !== null && redundancy < 0.02),
  ).length;
  return (
    <section className="survey-work" aria-label="Survey">
      <Problems car={car} />
      <p className="survey-verdict">
        {sds.length > 0 && (
          <b>
            <Reading
              text={`Points are known to ± ${plusMinusLength(2 * Math.min(...sds), units)} to ± ${plusMinusLength(2 * Math.max(...sds), units)} ${unit}.`}
            />
          </b>
        )}{" "}
        <span className="quiet">
          {count(survey.points.length, "point")}, {count(taken, "reading")} taken
          {off > 0 && `, ${off} put off`}
          {result.suspicions.length > 0 && `, ${result.suspicions.length} not used`}.{" "}
          {result.degreesOfFreedom === 0
            ? "Nothing is read twice over, so no reading can be checked yet."
            : result.agreement?.isMisfit
              ? ""
              : "The readings in use agree."}{" "}
          {alone > 0 &&
            `${count(alone, "reading is", "readings are")} checked by no other: a slip there would not show.`}
        </span>
      </p>
      <NextReading car={car} section={section} />
      <p className="problem-actions">
        <button
          type="button"
          className="pressable take"
          onClick={() => showPanel({ kind: "survey-reading", index: null })}
        >
          Add a reading
        </button>
        <AddPoint taken={section.points.map(({ name }) => name)} />
      </p>
      <h3>Where the points are</h3>
      <p className="small quiet">
        Drawn over the car as rings: where each point is, 95 in 100, {ENLARGED} times as large.
      </p>
      <PointsTable car={car} chosen={chosen} onChoose={showSurveyPoint} />
      <h3>
        {chosen === null ? "Readings" : `Readings to ${chosen}`}
        {chosen !== null && (
          <button type="button" className="pressable link" onClick={() => showSurveyPoint(null)}>
            show all
          </button>
        )}
      </h3>
      <ReadingsList car={car} section={section} point={chosen} />
      <PointSources car={car} />
      <p className="small quiet">
        ± is two standard deviations: about 95 in 100 are within. It is as good as the ± of the readings; a tape that
        sags or a floor that slopes is in none of them.
      </p>
    </section>
  );
}

const count = (number: number, one: string, many = `${one}s`): string => `${number} ${number === 1 ? one : many}`;

function AddPoint({ taken }: { readonly taken: readonly string[] }): ReactNode {
  const section = useBench(({ document }) => document?.survey);
  const [isOpen, setOpen] = useState(false);
  if (!isOpen) {
    return (
      <button type="button" className="pressable quiet" onClick={() => setOpen(true)}>
        Name a new point
      </button>
    );
  }
  return (
    <NewPoint
      taken={taken}
      onName={(point) => {
        edit(putPoint(section, point), `${point.name}: a new point`);
        setOpen(false);
      }}
      onGiveUp={() => setOpen(false)}
    />
  );
}

function NoSurvey(): ReactNode {
  return (
    <section className="survey-work" aria-label="Survey">
      <p>
        Every point of this car is typed. If you would rather tape the car: name points on it, read between them in any
        order, and the coordinates come of it, each with its ±.
      </p>
      <p className="problem-actions">
        <button
          type="button"
          className="pressable take"
          onClick={() => showPanel({ kind: "survey-reading", index: null })}
        >
          Start with a reading
        </button>
        <AddPoint taken={[]} />
      </p>
      <p className="small quiet">
        Begin with three points that are easy to plumb: how high, how far out, how far forward of your mark. Then tape
        between everything.
      </p>
    </section>
  );
}
