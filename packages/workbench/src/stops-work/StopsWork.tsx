import { proposeStops, type StopsProposal, studyStops, USUAL_STOPS } from "@armwright/engine";
import { parsePath, valueAt } from "@armwright/engine/document";
import { type ReactNode, useMemo, useState } from "react";
import { useBench } from "../app/use-bench.ts";
import { placeName } from "../form/schema-fields.ts";
import { valueInWords } from "../form/value-words.ts";
import { useRestingStudy } from "../mounts/use-resting-study.ts";
import { ValueEntry } from "../mounts/ValueEntry.tsx";
import { chooseStep, edit } from "../store/bench.ts";
import "../styles/figures.css";
import { Reading } from "../words/Reading.tsx";
import { BumpStopFacts } from "./BumpStopFacts.tsx";
import { StrapFacts } from "./StrapFacts.tsx";

/** Strap and bump stop as they are, and as they would have to be for the travel aimed at; found when the hand rests. */
export function StopsWork(): ReactNode {
  const study = useRestingStudy();
  const [dropHeight, setDrop] = useState(USUAL_STOPS.dropHeight);
  const [margin, setMargin] = useState(USUAL_STOPS.marginDroop);
  const found = useMemo(() => {
    const wish = { dropHeight, marginDroop: margin, marginBump: margin };
    return study && { stops: studyStops(study, wish), proposal: proposeStops(study, wish) };
  }, [study, dropHeight, margin]);
  if (!study || !found) return null;
  const { strap, bumpStop } = found.stops;
  const { car } = study;
  const isAssumed = (part: RegExp): boolean => car.assumed.some(({ path }) => part.test(path));
  return (
    <section className="stops-work" aria-label="Strap and bump stop">
      <h3>Strap</h3>
      {strap ? (
        <StrapFacts study={strap} isStretchAssumed={isAssumed(/^strap\.stretch/)} />
      ) : (
        <p className="small">No strap is entered.</p>
      )}
      <h3>Bump stop</h3>
      {bumpStop ? (
        <BumpStopFacts study={bumpStop} isForceAssumed={isAssumed(/^bumpStop\.(rubber|gas)/)} />
      ) : (
        <p className="small">No bump stop is entered.</p>
      )}
      <Proposal proposal={found.proposal} />
      <div className="two-wide">
        <ValueEntry
          label="It drops flat from"
          value={dropHeight}
          least={0}
          most={MOST_DROP}
          onEnter={setDrop}
          {...(dropHeight === USUAL_STOPS.dropHeight && { note: "common practice" })}
        />
        <ValueEntry
          label="Left before a hard limit"
          value={margin}
          least={0}
          most={MOST_MARGIN}
          onEnter={setMargin}
          {...(margin === USUAL_STOPS.marginDroop && { note: "common practice" })}
        />
      </div>
      <p className="small quiet">Springs out and the car on stands before either is set.</p>
    </section>
  );
}

/** Higher than this no flat drop is reckoned with, m; nor a wider margin. */
const MOST_DROP = 3;
const MOST_MARGIN = 0.2;

function Proposal({ proposal }: { readonly proposal: StopsProposal }): ReactNode {
  const document = useBench((state) => state.document);
  const units = useBench((state) => state.units);
  if (!document) return null;
  const operations = proposal.operations.filter(
    ({ path, value }) => JSON.stringify(valueAt(document, parsePath(path) ?? [])) !== JSON.stringify(value),
  );
  const parts = [
    ["strap", proposal.strap],
    ["bump stop", proposal.bumpStop],
  ] as const;
  return (
    <>
      <h3>For the travel aimed at</h3>
      <ul className="facts">
        {parts.map(([name, part]) =>
          "refused" in part ? (
            <li key={name} className="short">
              {REFUSED[part.refused].replace("IT", `the ${name}`)}
            </li>
          ) : part.because !== null ? (
            <li key={name}>
              The {name} has to end it sooner: {part.because} comes first.
            </li>
          ) : null,
        )}
        {operations.map(({ path, value }) => (
          <li key={path}>
            {placeName(path, document)}: <Reading text={valueInWords(path, value, document, units)} />
          </li>
        ))}
      </ul>
      {operations.length > 0 ? (
        <>
          <p className="adders">
            <button
              type="button"
              className="pressable take"
              onClick={() => edit(operations, "strap and bump stop for the travel aimed at")}
            >
              Take it
            </button>
          </p>
          <p className="small quiet">
            Places are found without a look at what is in the way: see that there is frame to weld to, and look at{" "}
            <button type="button" className="inline-link" onClick={() => chooseStep("room")}>
              Room
            </button>
            .
          </p>
        </>
      ) : (
        parts.every(([, part]) => !("refused" in part)) && <p className="small">Both are set for it.</p>
      )}
    </>
  );
}

const REFUSED = {
  "no-arm": "This linkage has no arm to put IT on: enter its mounts, then look again.",
  "no-room": "No length of IT ends the travel before a hard limit: move its mounts, or free the limit.",
} as const;
