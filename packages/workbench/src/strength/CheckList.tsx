import { type PartCheck, type StrengthStudy, sayCheck, sayHelp } from "@armwright/engine";
import type { ReactNode } from "react";
import { GravityMark } from "../app/Mark.tsx";
import { useBench } from "../app/use-bench.ts";
import { capital } from "../form/schema-fields.ts";
import { bench, carryTravel } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import { travelSaid } from "../words/shown.ts";
import { shownFigures, threeFigures } from "../words/three-figures.ts";
import { heavierTubesHelp } from "./heavier-tubes-help.ts";
import { showCase } from "./strength-store.ts";

/** Under this a part yields in its case; under ENOUGH what would help is told. */
const HOLDS = 1;
const ENOUGH = 1.5;

interface Props {
  readonly found: StrengthStudy;
  /** Other sizes are still of the car before, and say nothing of this one. */
  readonly isLooking: boolean;
}

/** Every part against every limit, weakest first; a factor never without its load case. */
export function CheckList({ found, isLooking }: Props): ReactNode {
  const { checks, notEntered } = found;
  const loaded = checks.filter(({ factor }) => factor !== null);
  const idle = checks.filter(({ factor }) => factor === null);
  const weak = loaded.filter(({ factor }) => factor !== null && factor < HOLDS).length;
  return (
    <>
      <h3>
        Weakest first{" "}
        <small>
          {weak === 0 ? "nothing gives way in these cases" : `${weak} of ${loaded.length} give way in their case`}
        </small>
      </h3>
      <ol className="checks">
        {loaded.map((check, index) => (
          <Row
            key={`${check.part} ${check.label} ${check.check}`}
            check={check}
            found={found}
            isLooking={isLooking}
            isToldAbove={loaded.slice(0, index).some((other) => other.check === check.check)}
          />
        ))}
      </ol>
      {idle.length > 0 && (
        <p className="small">
          <b>Not loaded by these cases:</b> {idle.map(({ label, check }) => `${label} (${sayCheck(check)})`).join("; ")}
          .
        </p>
      )}
      {notEntered.length > 0 && (
        <p className="small">
          <b>Not judged, because not entered:</b> {notEntered.join("; ")}.
        </p>
      )}
    </>
  );
}

interface RowProps extends Props {
  readonly check: PartCheck;
  /** What helps against the same has been told of a weaker part. */
  readonly isToldAbove: boolean;
}

function Row({ check, found, isLooking, isToldAbove }: RowProps): ReactNode {
  const units = useBench((state) => state.units);
  const { label, where, factor, loadCase, demand, allowable, dimension, basis, travel } = check;
  if (factor === null || loadCase === null) return null;
  const isWeak = factor < HOLDS;
  const isShare = dimension === "percent";
  return (
    <li className={isWeak ? "check is-weak" : "check"}>
      <p className="factor">
        <b>{threeFigures(factor)}</b>
        <UseBar use={1 / factor} />
        {isWeak && (
          <span className="small">
            <GravityMark gravity="must" /> gives way
          </span>
        )}
      </p>
      <div>
        <p className="check-name">
          <b>{capital(label)}</b>
          {where !== "" && `, ${where}`}
        </p>
        <p className="small">
          {capital(sayCheck(check.check))}:{" "}
          {isShare ? (
            <>
              {threeFigures(demand * 100)}
              {"\u00a0"}% of what it may bear
            </>
          ) : (
            <>
              <b>{shownFigures(demand, dimension, units)}</b> against {shownFigures(allowable, dimension, units)}
            </>
          )}
        </p>
        <p className="small">
          <button type="button" className="to-case" onClick={() => goToCase(loadCase, travel)}>
            in {loadCase}, the wheel at <Reading text={travelSaid(travel, units)} />
          </button>
        </p>
        {factor < ENOUGH && (
          <p className="small">
            Helps: {isToldAbove ? "as above" : sayHelp(check.check)}.
            {!isLooking && <HeavierTubes check={check} found={found} />}
          </p>
        )}
        <details className="small quiet">
          <summary>how?</summary>
          <p>
            {isShare ? "" : `${shownFigures(allowable, dimension, units)}: `}
            {basis}. Factor = may bear ÷ has to bear, {threeFigures(factor)}.
          </p>
        </details>
      </div>
    </li>
  );
}

/** The wheel goes to where the case stands, and the arm's picture shows it. */
function goToCase(loadCase: string, travel: number): void {
  showCase(loadCase);
  carryTravel(travel);
}

function HeavierTubes({ check, found }: { readonly check: PartCheck; readonly found: StrengthStudy }): ReactNode {
  const { units } = bench.getState();
  const words = heavierTubesHelp(check, found, units);
  return words === null ? null : <Reading text={` ${words}`} />;
}

const WIDTH = 92;
/** The bar's length stands for twice what the part may bear. */
const FULL = 2;

/** How much of what it may bear the part is asked: an upright marks all of it, what is beyond is hatched. */
function UseBar({ use }: { readonly use: number }): ReactNode {
  const to = (share: number): number => (Math.min(share, FULL) / FULL) * WIDTH;
  return (
    <svg className="use-bar" width={WIDTH + 2} height="12" viewBox={`0 0 ${WIDTH + 2} 12`} aria-hidden="true">
      <path className="use-base" d={`M0 9H${WIDTH}`} />
      <path className="use-held" d={`M0 3H${to(Math.min(use, 1))}V9H0z`} />
      {use > 1 && (
        <>
          <path fill="url(#hatch-out-of-reach)" d={`M${to(1)} 3H${to(use)}V9H${to(1)}z`} />
          <path className="use-over" d={`M${to(1)} 3H${to(use)}${use < FULL ? "V9" : ""}M${to(1)} 9H${to(use)}`} />
        </>
      )}
      <path className="use-mark" d={`M${to(1)} 0V12`} />
    </svg>
  );
}
