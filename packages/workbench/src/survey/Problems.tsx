import {
  type CarSurvey,
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
import type { ReactNode } from "react";
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
  const open = (reading: SurveyReading): void => takeReading(car, reading);
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
              <button type="button" className="pressable take" onClick={() => open(settledBy.reading)}>
                Take that reading
              </button>
            )}
          </Problem>
        );
      })}
      {result.undetermined.map((each) => (
        <Problem
          key={sayUndetermined(survey, each)}
          gravity="must"
          words={`${capitalised(sayUndetermined(survey, each))}. ${sayRemedy(survey, each)}`}
        >
          {each.remedy && (
            <button
              type="button"
              className="pressable take"
              onClick={() => {
                if (each.remedy) open(each.remedy);
              }}
            >
              Take that reading
              <span className="unseen">: {sayReading(survey, each.remedy)}</span>
            </button>
          )}
        </Problem>
      ))}
      {result.agreement?.isMisfit && (
        <Problem
          gravity="mind"
          words={`The readings miss each other ${(result.scatter ?? 0).toFixed(1)} times as far as their ± allows. Take again what misses most, or say a wider ±.`}
        />
      )}
    </ul>
  );
}

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
  readonly gravity: "must" | "mind";
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
