import { type CarSurvey, nextReadings, pointsOf, sayReading } from "@armwright/engine";
import { type ReactNode, useMemo, useState } from "react";
import { useBench } from "../app/use-bench.ts";
import { edit } from "../store/bench.ts";
import { plusMinusLength } from "../words/plus-minus.ts";
import { Reading } from "../words/Reading.tsx";
import { capitalised } from "../words/shown.ts";
import { takeReading } from "./Problems.tsx";
import { ReadingPicture } from "./ReadingPicture.tsx";
import { entryOf, isPlaced, putReading, type SurveySection } from "./survey-document.ts";

interface Props {
  readonly car: CarSurvey;
  readonly section: SurveySection;
}

/** The reading that tells most now, with a picture of where the tape goes; others on demand. */
export function NextReading({ car, section }: Props): ReactNode {
  const { survey, solved, result, uses } = car;
  const units = useBench((state) => state.units);
  const [turn, setTurn] = useState(0);
  const found = useMemo(() => {
    const used = new Set(uses.map(({ point }) => point));
    const all = survey.points.map((_, index) => index);
    const chosen = all.filter((index) => used.has(survey.points[index]!.name));
    return nextReadings(survey, solved, { kind: "points", points: chosen.length > 0 ? chosen : all }, MOST);
  }, [survey, solved, uses]);
  const next = found[turn % Math.max(found.length, 1)];
  if (!next) return null;
  const words = capitalised(sayReading(survey, next.reading));
  const width = (sd: number): string => plusMinusLength(2 * sd, units);
  const [before, after] = [width(next.before), width(next.after)];
  const tells = next.isNeeded
    ? "Tells what nothing has told so far."
    : before === after
      ? "Checks what is known already; little is left to narrow."
      : `Brings the ± of all points together from ${before} to ${after} ${units === "metric" ? "mm" : "in"}.`;
  return (
    <section className="next-survey-reading" aria-label="Next reading">
      <h3>Next, best to take</h3>
      <div className="next-body">
        <button
          type="button"
          className="picture-button"
          aria-label={`Read it: ${words}`}
          onClick={() => takeReading(car, next.reading, next.deferred)}
        >
          {pointsOf(next.reading).every((point) => isPlaced(result, point)) ? (
            <ReadingPicture points={result.points} reading={next.reading} text="" />
          ) : (
            <span className="reading-picture no-picture quiet">Where it goes is not known yet: no picture.</span>
          )}
        </button>
        <p className="next-words">
          <b>{words}</b>
          {next.deferred !== undefined && <span className="quiet"> (put off so far)</span>}{" "}
          <span className="quiet">
            <Reading text={tells} />
          </span>
        </p>
        <p className="problem-actions">
          <button
            type="button"
            className="pressable take"
            onClick={() => takeReading(car, next.reading, next.deferred)}
          >
            Read it
          </button>
          {found.length > 1 && (
            <button type="button" className="pressable quiet" onClick={() => setTurn(turn + 1)}>
              Another
            </button>
          )}
          {next.deferred === undefined && (
            <button
              type="button"
              className="pressable quiet"
              onClick={() =>
                edit(
                  putReading(section, { ...entryOf(next.reading, survey.points), deferred: true }, null, []),
                  `${words}: put off`,
                )
              }
            >
              Note it for later
            </button>
          )}
        </p>
      </div>
    </section>
  );
}

const MOST = 4;
