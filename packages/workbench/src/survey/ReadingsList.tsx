import { type CarSurvey, pointsOf, sayReading, sayReadingValue } from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { typedText } from "../form/typed.ts";
import { showPanel } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import { tidy } from "../words/shown.ts";
import { factsOf, isPutOff, type ReadingEntry, readOf, type SurveySection } from "./survey-document.ts";

interface Props {
  readonly car: CarSurvey;
  readonly section: SurveySection;
  /** Only readings to this point. */
  readonly point: string | null;
}

/** The readings as they were taken, each with what all of them together make it; a press takes one again. */
export function ReadingsList({ car, section, point }: Props): ReactNode {
  const { survey, result } = car;
  const units = useBench((state) => state.units);
  const own = useBench(({ document }) => document?.units ?? "inch-pound");
  const rows = survey.readings.flatMap((reading, index) => {
    const entry = section.readings[index];
    const isOfPoint = point === null || pointsOf(reading).some((each) => survey.points[each]?.name === point);
    return entry && isOfPoint ? [{ reading, index, entry }] : [];
  });
  return (
    <ul className="survey-readings">
      {rows.map(({ reading, index, entry }) => {
        const solved = result.readings[index];
        const number = solved?.numbers[0];
        const isWrong = result.suspicions.some((each) => each.reading === index);
        const words = sayReading(survey, reading);
        const read = shownRead(entry, own, units);
        const added = "add" in reading ? reading.add : 0;
        const together =
          number && read !== "" && solved?.isUsed ? tidy(sayReadingValue(reading, number.adjusted - added, units)) : "";
        return (
          <li key={`${index} ${words}`}>
            <button
              type="button"
              className={isWrong ? "wrong" : undefined}
              data-field={`survey.readings[${index}].reads`}
              onClick={() => showPanel({ kind: "survey-reading", index })}
            >
              <span>{words}</span>
              <b>
                <Reading text={read === "" ? stateOf(entry) : read} />
              </b>
              <small>
                {isWrong ? (
                  <em>not used</em>
                ) : isPutOff(entry) ? (
                  read === "" ? (
                    ""
                  ) : (
                    "put aside"
                  )
                ) : together !== "" && !read.startsWith(`${together} `) && together !== read ? (
                  <Reading text={`all: ${together}`} />
                ) : (
                  ""
                )}
              </small>
            </button>
          </li>
        );
      })}
    </ul>
  );
}

const stateOf = (entry: ReadingEntry): string =>
  factsOf(entry.kind).reads === "nothing" || factsOf(entry.kind).reads === "by" ? "so" : "to take";

/** As it was typed, in the shown units. */
function shownRead(entry: ReadingEntry, own: "inch-pound" | "metric", units: "inch-pound" | "metric"): string {
  const typed = typedText((entry as Readonly<Record<string, unknown>>)["reads"]);
  const value = readOf(entry, own);
  if (typed === "" || value === null) return "";
  if (entry.kind === "level") return tidy(sayReadingValue({ kind: "level" } as never, value, units));
  const unit = units === "metric" ? "mm" : "in";
  return own === units && !/[a-z"']/i.test(typed)
    ? `${tidy(typed)} ${unit}`
    : `${tidy(sayReadingValue({ kind: "tape" } as never, value, units))} ${unit}`;
}
