import {
  type ArmProposal,
  armWords,
  formatTube,
  formatWall,
  type StrengthStudy,
  type UnitSystem,
} from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { capital } from "../form/schema-fields.ts";
import { Reading } from "../words/Reading.tsx";
import { shown } from "../words/shown.ts";
import { threeFigures } from "../words/three-figures.ts";
import { takeChange } from "./take-change.ts";
import { massChange } from "./tube-words.ts";

/** What makes an arm hold that does not: reckoned with, lightest first, each taken by one press. */
export function Proposals({
  found,
  isLooking,
}: {
  readonly found: StrengthStudy;
  readonly isLooking: boolean;
}): ReactNode {
  const units = useBench((state) => state.units);
  const weak = found.arms.filter(({ checks }) => checks.some(({ factor }) => factor !== null && factor < 1));
  if (weak.length === 0) return null;
  return (
    <>
      <h3>
        What makes it hold <small>every tube of the arm in every case</small>
      </h3>
      {isLooking && (
        <p className="small" role="status">
          Looking for it …
        </p>
      )}
      {!isLooking && found.proposals.length === 0 && (
        <p className="small">
          {weak.every(({ frame }) => frame.isAssumed)
            ? "No larger tubes, plate or second tube makes it hold: bring shock and stop nearer to the wheel or between both tubes, or soften the landing."
            : "It is your own frame: make its tubes larger there."}
        </p>
      )}
      <ul className="proposals">
        {found.proposals.map((proposal) => (
          <li key={`${proposal.arm} ${proposal.kind}`}>
            <div>
              <p>
                <b>{capital(armWords(proposal.arm))}:</b> <Reading text={changeWords(proposal, units)} />
              </p>
              <p className="small">
                {massChange(proposal.added, units)}; weakest factor then{" "}
                {proposal.weakest.factor === null ? (
                  "none loaded"
                ) : (
                  <>
                    <b>{threeFigures(proposal.weakest.factor)}</b>, {proposal.weakest.label} in{" "}
                    {proposal.weakest.loadCase}
                  </>
                )}
              </p>
            </div>
            <button
              type="button"
              className="take"
              aria-label={`Take it: ${changeWords(proposal, units)}`}
              onClick={() => takeChange(proposal.operations, changeWords(proposal, units))}
            >
              Take it
            </button>
          </li>
        ))}
      </ul>
      {!isLooking && found.tried.length > 0 && (
        <>
          <p className="small">Tried, and not enough:</p>
          <ul className="small tried">
            {found.tried.map((each) => (
              <li key={`${each.arm} ${each.kind}`}>
                {capital(armWords(each.arm))}: <Reading text={changeWords(each, units)} />; weakest factor then{" "}
                <b>{each.weakest.factor === null ? "none loaded" : threeFigures(each.weakest.factor)}</b>,{" "}
                {each.weakest.label} {each.weakest.where}
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

function changeWords({ change }: ArmProposal, units: UnitSystem): string {
  const { main, cross, under, gusset } = change;
  const length = (metres: number): string => shown(metres, "length", units);
  return [
    main && `tubes of ${formatTube(main, units)}`,
    cross && `cross tubes of ${formatTube(cross, units)}`,
    under && `a second tube of ${formatTube(under, units)}, ${length(under.drop)} below, with a post under each mount`,
    gusset &&
      `a plate ${formatWall(gusset.thickness, units)} thick and ${length(gusset.depth)} deep on edge under the mount, ${length(gusset.reach)} either way`,
  ]
    .filter((each) => each)
    .join("; ");
}
