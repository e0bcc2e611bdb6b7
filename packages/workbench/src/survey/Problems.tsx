import {
  type CarSurvey,
  pointsOf,
  type SurveyReading,
  type Suspicion,
  sayCause,
  sayMirrored,
  sayReading,
  sayRemedy,
  saySettling,
  saySuspicion,
  sayUndetermined,
} from "@armwright/engine";
import type { FieldValue } from "@armwright/engine/document";
import { type ReactNode, useState } from "react";
import { GravityMark } from "../app/Mark.tsx";
import { useBench } from "../app/use-bench.ts";
import { edit, showPanel } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import { capitalised, tidy } from "../words/shown.ts";
import { entryOf } from "./survey-document.ts";

interface Props {
  readonly car: CarSurvey;
}

/** What is wrong with the readings, what they leave open, and a press of a button toward mending each. */
export function Problems({ car }: Props): ReactNode {
  const { survey, result } = car;
  const units = useBench((state) => state.units);
  return (
    <ul className="survey-problems">
      {result.suspicions.map((each) => (
        <Wrong key={each.reading} car={car} suspicion={each} />
      ))}
      {result.mirrored.map(({ settledBy, ...rest }) => {
        const each = { settledBy, ...rest };
        return (
          <Problem
            key={sayMirrored(survey, each)}
            gravity="must"
            words={`${capitalised(sayMirrored(survey, each))}. ${saySettling(survey, each, units)}`}
          >
            {settledBy.kind === "side" ? (
              SIDES.map((side) => (
                <button
                  key={side}
                  type="button"
                  className="pressable take"
                  onClick={() =>
                    edit(
                      [{ path: `survey.points[${settledBy.point}].side`, value: side }],
                      `${survey.points[settledBy.point]?.name} is on the ${side}`,
                    )
                  }
                >
                  On the {side}
                </button>
              ))
            ) : (
              <TakeIt car={car} reading={settledBy.reading} />
            )}
          </Problem>
        );
      })}
      <OpenPoints car={car} />
      {result.agreement?.isMisfit && (
        <Problem
          gravity="mind"
          words={`The readings miss each other ${(result.scatter ?? 0).toFixed(1)} times as far as their ± allows. Take again what misses most, or say a wider ±.`}
        />
      )}
    </ul>
  );
}

/** More points than this that are open one by one are told on demand. */
const MOST_OPEN = 2;

/** What no reading tells: by name and direction, with the one reading that tells it; untouched points in one line. */
function OpenPoints({ car }: Props): ReactNode {
  const { survey, result, uses } = car;
  const [isAll, setAll] = useState(false);
  const open = survey.points.flatMap((point, index) => {
    const ways = result.undetermined.filter((each) => each.point === index);
    const isUsed = uses.some((use) => use.point === point.name);
    const isTouched = survey.readings.some((reading) => !reading.isDeferred && pointsOf(reading).includes(index));
    return ways.length === 0 ? [] : [{ name: point.name, ways, isUsed, isTouched }];
  });
  const untouched = open.filter(({ isTouched }) => !isTouched);
  const begun = open.filter(({ isTouched }) => isTouched);
  const shown = isAll ? begun : begun.slice(0, MOST_OPEN);
  const first = untouched[0]?.ways.find(({ remedy }) => remedy)?.remedy;
  return (
    <>
      {shown.map(({ name, ways, isUsed }) => {
        const [way] = ways;
        const remedy = way?.remedy;
        return (
          <Problem
            key={name}
            gravity={isUsed ? "must" : "mind"}
            words={`${capitalised(ways.map((each) => sayUndetermined(survey, each)).join("; "))}. ${way ? sayRemedy(survey, way) : ""}`}
          >
            {remedy && <TakeIt car={car} reading={remedy} />}
          </Problem>
        );
      })}
      {begun.length > shown.length && (
        <Problem gravity="mind" words={`${counted(begun.length - shown.length, "more point")} cannot be told yet.`}>
          <button type="button" className="pressable link" onClick={() => setAll(true)}>
            Show them
          </button>
        </Problem>
      )}
      {untouched.length > 0 && (
        <Problem
          gravity={untouched.some(({ isUsed }) => isUsed) ? "must" : "note"}
          words={`Nothing has been read to ${listed(untouched.map(({ name }) => name))} yet.`}
        >
          {first && <TakeIt car={car} reading={first} />}
        </Problem>
      )}
    </>
  );
}

const TakeIt = ({ car, reading }: Props & { readonly reading: SurveyReading }): ReactNode => (
  <button type="button" className="pressable take" onClick={() => takeReading(car, reading)}>
    Take that reading
    <span className="unseen">: {sayReading(car.survey, reading)}</span>
  </button>
);

const counted = (count: number, one: string): string => `${count} ${count === 1 ? one : `${one}s`}`;

const listed = (names: readonly string[]): string =>
  names.length > 4
    ? `${names.slice(0, 3).join(", ")} and ${names.length - 3} more`
    : names.length === 1
      ? (names[0] ?? "")
      : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;

const SIDES = ["left", "right"] as const;

/** Opens the keypad for a reading: the one that was put off, where it is in the list already. */
export function takeReading({ survey }: CarSurvey, reading: SurveyReading, deferred?: number): void {
  showPanel({
    kind: "survey-reading",
    index: deferred ?? null,
    start: entryOf(reading, survey.points),
  });
}

/** A reading that the others contradict: what it reads, what they say, what may have happened. */
function Wrong({ car, suspicion }: Props & { readonly suspicion: Suspicion }): ReactNode {
  const { survey } = car;
  const units = useBench((state) => state.units);
  const { reading: index, causes, alternatives } = suspicion;
  const said = tidy(saySuspicion(survey, suspicion, units));
  const unit = survey.readings[index]?.kind === "level" ? "" : units === "metric" ? " mm" : " in";
  const perhaps = causes[0] ? ` Perhaps ${tidy(sayCause(causes[0], units))}` : "";
  const name = survey.readings[index] ? sayReading(survey, survey.readings[index]) : "";
  return (
    <Problem
      gravity="mind"
      words={`${capitalised(said)}${unit}.${perhaps}${perhaps === "" || perhaps.endsWith("?") ? "" : "."}`}
      then="It is not used until it is read again."
    >
      <button type="button" className="pressable take" onClick={() => showPanel({ kind: "survey-reading", index })}>
        Read it again<span className="unseen">: {name}</span>
      </button>
      <button
        type="button"
        className="pressable quiet"
        onClick={() =>
          edit(
            [{ path: `survey.readings[${index}].deferred`, value: true as unknown as FieldValue }],
            `${name}: put aside`,
          )
        }
      >
        Put it aside<span className="unseen">: {name}</span>
      </button>
      {alternatives.length > 0 && (
        <p className="small">
          As likely, the readings cannot say which:{" "}
          {alternatives.map((other, k) => (
            <span key={other}>
              {k > 0 && "; "}
              <button
                type="button"
                className="pressable link"
                onClick={() => showPanel({ kind: "survey-reading", index: other })}
              >
                {survey.readings[other] ? sayReading(survey, survey.readings[other]) : ""}
              </button>
            </span>
          ))}
          .
        </p>
      )}
    </Problem>
  );
}

function Problem({
  gravity,
  words,
  then,
  children,
}: {
  readonly gravity: "must" | "mind" | "note";
  readonly words: string;
  readonly then?: string;
  readonly children?: ReactNode;
}): ReactNode {
  return (
    <li>
      <GravityMark gravity={gravity} />
      <div>
        <p role="status">
          <Reading text={tidy(words)} /> {then !== undefined && <span className="quiet">{then}</span>}
        </p>
        {children !== undefined && <div className="problem-actions">{children}</div>}
      </div>
    </li>
  );
}
