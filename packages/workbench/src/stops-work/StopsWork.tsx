import { proposeStops, type StopsProposal, studyStops } from "@armwright/engine";
import { type ReactNode, useMemo } from "react";
import { useBench } from "../app/use-bench.ts";
import { placeName } from "../form/schema-fields.ts";
import { valueInWords } from "../form/value-words.ts";
import { edit } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import { shown } from "../words/shown.ts";

/** Strap and bump stop as they are, and as they would have to be for the travel aimed at; found when the hand rests. */
export function StopsWork(): ReactNode {
  const study = useBench(({ live, moving }) => (moving ? null : live.study));
  const units = useBench((state) => state.units);
  const found = useMemo(() => (study ? { stops: studyStops(study), proposal: proposeStops(study) } : null), [study]);
  if (!study || !found) return null;
  const { strap, bumpStop } = found.stops;
  const length = (metres: number, sign = false): ReactNode => (
    <Reading text={shown(metres, "length", units, { sign })} />
  );
  const force = (newtons: number): ReactNode => <Reading text={shown(newtons, "force", units)} />;
  return (
    <section className="stops-work" aria-label="Strap and bump stop">
      <h3>Strap and bump stop</h3>
      {!strap && <p className="small">No strap is entered.</p>}
      {strap?.snatch && (
        <p>
          Strap, snatched: {force(strap.snatch.force)}, stretched by {length(strap.snatch.stretch)}.
        </p>
      )}
      {!bumpStop && <p className="small">No bump stop is entered.</p>}
      {bumpStop?.drop && (
        <p>
          Bump stop, dropped flat: stops the wheel at {length(bumpStop.drop.travel, true)} of travel with{" "}
          {force(bumpStop.drop.force)} on the arm.
        </p>
      )}
      <Proposal proposal={found.proposal} />
      <p className="small quiet">
        Assumptions and the force curve: <code>npx armwright stops</code>. Springs out and the car on stands before
        either is set.
      </p>
    </section>
  );
}

function Proposal({ proposal }: { readonly proposal: StopsProposal }): ReactNode {
  const document = useBench((state) => state.document);
  const units = useBench((state) => state.units);
  const { operations } = proposal;
  const refused = [proposal.strap, proposal.bumpStop].flatMap((part) => ("refused" in part ? [part.refused] : []));
  if (operations.length === 0)
    return refused.length > 0 ? <p className="small">No better place is known for them here.</p> : null;
  return (
    <>
      <h3>For the travel aimed at</h3>
      <ul className="small">
        {operations.map(({ path, value }) => (
          <li key={path}>
            {placeName(path, document)}: {document && <Reading text={valueInWords(path, value, document, units)} />}
          </li>
        ))}
      </ul>
      <button
        type="button"
        className="pressable take"
        onClick={() => edit(operations, "strap and bump stop for the travel aimed at")}
      >
        Take it
      </button>
      <p className="small quiet">
        Places are found without a look at what is in the way: see that there is frame to weld to.
      </p>
    </>
  );
}
