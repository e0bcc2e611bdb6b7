import { formatNumber, fromUnit, type StrapStudy, USUAL_STOPS } from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { chooseStep } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import { shown } from "../words/shown.ts";

/** The pull at which a strap's assumed stretch is told, N. */
const ASSUMED_PULL = fromUnit(2000, "force", "inch-pound");

/** Where it comes taut, how it pulls, and what a snatch makes of it. */
export function StrapFacts({
  study,
  isStretchAssumed,
}: {
  readonly study: StrapStudy;
  readonly isStretchAssumed: boolean;
}): ReactNode {
  const units = useBench((state) => state.units);
  const { taut, strap, slackAtRide, hardLimit, margin, shaftLeft, snatch, holes } = study;
  const length = (metres: number, sign = false): ReactNode => (
    <Reading text={shown(metres, "length", units, { sign })} />
  );
  if (!taut) return <p className="small">It never comes taut: it is too long.</p>;
  return (
    <ul className="facts">
      <li>
        {length(strap.length)} hole to hole, {length(Math.max(0, slackAtRide))} slack at ride. Taut at{" "}
        {length(taut.travel, true)} of travel
        {hardLimit && margin !== null && <Margin margin={margin} label={hardLimit.label} />}, {degrees(taut.offPath)}{" "}
        across its mount's path.
      </li>
      {shaftLeft !== null && (
        <li>
          Shaft left in the shock then: {length(shaftLeft)} (common practice: {length(USUAL_STOPS.shaftAtDroop)} to
          twice that).
        </li>
      )}
      {snatch ? (
        <li className={snatch.margin !== null && snatch.margin < 0 ? "short" : undefined}>
          Snatched, the wheel comes at {shown(snatch.speed, "speed", units)} with{" "}
          {shown(snatch.energy, "energy", units)}: it pulls <b>{shown(snatch.force, "force", units)}</b> and stretches{" "}
          <b>{length(snatch.stretch)}</b>, to {length(snatch.travel, true)}
          {hardLimit && snatch.margin !== null && <Margin margin={snatch.margin} label={hardLimit.label} />}.
        </li>
      ) : (
        <li>
          What snatches at it cannot be told yet: enter weights in{" "}
          <button type="button" className="inline-link" onClick={() => chooseStep("stance")}>
            Stance
          </button>{" "}
          and springs in{" "}
          <button type="button" className="inline-link" onClick={() => chooseStep("springs")}>
            Springs
          </button>
          .
        </li>
      )}
      {holes !== null && <li>{holeWords(holes, "let it out", "take it in", "tail")}</li>}
      {isStretchAssumed && (
        <li className="quiet">
          Its stretch is assumed: 7.5 % under {shown(ASSUMED_PULL, "force", units)} (common practice: 5 to 10 % under a
          snatch).
        </li>
      )}
    </ul>
  );
}

/** How much wheel travel there is to the hard limit. */
export function Margin({ margin, label }: { readonly margin: number; readonly label: string }): ReactNode {
  const units = useBench((state) => state.units);
  const amount = <Reading text={shown(Math.abs(margin), "length", units)} />;
  return margin >= 0 ? (
    <>
      , {amount} of wheel travel before {label}
    </>
  ) : (
    <span className="short">
      , {amount} too late: {label} comes first
    </span>
  );
}

export const degrees = (angle: number): string => `${formatNumber((angle * 180) / Math.PI, 0)}°`;

export function holeWords(holes: number, out: string, back: string, what: string): string {
  if (holes === 0) return `The hole in use of its ${what} is the right one.`;
  return `Holes of its ${what}: ${holes > 0 ? out : back} by ${Math.abs(holes)}.`;
}
