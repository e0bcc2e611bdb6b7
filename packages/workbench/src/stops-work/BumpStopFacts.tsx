import { type BumpStopStudy, bumpStopAt, lawSpread, USUAL_STOPS } from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { CurveChart, type CurvePoint } from "../curve/CurveChart.tsx";
import { roomAbove } from "../curve/ticks.ts";
import { chooseStep } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import { bare, shown, unitShown } from "../words/shown.ts";
import { degrees, holeWords, Margin } from "./StrapFacts.tsx";

const SQUEEZES = [0.25, 0.5, 0.75, 1];
const POINTS = 40;

/** Where it lands, its force as it is squeezed, and what it makes of a flat drop. */
export function BumpStopFacts({
  study,
  isForceAssumed,
}: {
  readonly study: BumpStopStudy;
  readonly isForceAssumed: boolean;
}): ReactNode {
  const units = useBench((state) => state.units);
  const { touched, solid, hardLimit, margin, lever, shaftLeft, law, drop, takes, holes } = study;
  const length = (metres: number, sign = false): ReactNode => (
    <Reading text={shown(metres, "length", units, { sign })} />
  );
  const energy = (joules: number): string => shown(joules, "energy", units);
  if (!touched) return <p className="small">The wheel never comes to it.</p>;
  const first = Math.abs(touched.ratio);
  const last = Math.abs(solid?.ratio ?? first);
  return (
    <>
      <ul className="facts">
        <li>
          Touched at {length(touched.travel, true)} of travel
          {lever !== null && <>, {length(lever)} out on the arm from its hinge</>}, {degrees(touched.offPath)} off
          square (common practice: up to 10°).{" "}
          {solid ? (
            <>
              Solid at {length(solid.travel, true)}
              {hardLimit && margin !== null && <Margin margin={margin} label={hardLimit.label} />}.
            </>
          ) : (
            "The wheel does not squeeze it solid."
          )}
        </li>
        {shaftLeft !== null && (
          <li>
            Shaft left in the shock then: {length(shaftLeft)} (common practice: {length(USUAL_STOPS.shaftAtBump)} to
            twice that).
          </li>
        )}
        {drop ? (
          <li className={drop.left > 0 ? "short" : undefined}>
            Dropped flat, {energy(drop.arrives)} arrive as it is touched, at {shown(drop.speedAtTouch, "speed", units)}.{" "}
            {drop.left > 0 ? (
              <>
                It goes solid with {energy(drop.left)} left over: about <b>{shown(drop.force, "force", units)}</b> on
                the arm there.
              </>
            ) : (
              <>
                The wheel stops at {length(drop.travel, true)} with <b>{shown(drop.force, "force", units)}</b> on the
                arm, {shown(drop.atWheel, "force", units)} at the wheel.
              </>
            )}{" "}
            It is good for a drop of <b>{length(drop.mostHeight)}</b>.
          </li>
        ) : (
          <li>
            What arrives at it cannot be told yet: enter weights in{" "}
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
        {holes !== null && (
          <li>{holeWords(holes, "slide it toward the arm", "slide it away from the arm", "collar")}</li>
        )}
        {isForceAssumed && (
          <li className="quiet">
            Part of its force is assumed: press it in a vice with a scale and enter it as measured.
          </li>
        )}
      </ul>
      <PushCurve study={study} />
      <table className="figures">
        <thead>
          <tr>
            <th scope="col">squeezed, {unitShown("length", units)}</th>
            <th scope="col">push, {unitShown("force", units)}</th>
            <th scope="col">at the wheel</th>
            <th scope="col">taken, {unitShown("energy", units)}</th>
          </tr>
        </thead>
        <tbody>
          {SQUEEZES.map((share) => {
            const state = bumpStopAt(law, share * law.stroke);
            return (
              <tr key={share}>
                <th scope="row">
                  <Reading text={bare(share * law.stroke, "length", units)} />
                </th>
                <td>{bare(state.force, "force", units)}</td>
                <td>{bare(state.force * (first + share * (last - first)), "force", units)}</td>
                <td>{bare(state.energy, "energy", units)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
      {law.kind === "rubber" && (
        <p className="small quiet">
          Rubber of one hardness differs: {energy(takes.soft)} to {energy(takes.stiff)} until it is solid; the chart's
          second line is the stiffest.
        </p>
      )}
    </>
  );
}

function PushCurve({ study: { law } }: { readonly study: BumpStopStudy }): ReactNode {
  const squeezes = Array.from({ length: POINTS + 1 }, (_, i) => (law.stroke * i) / POINTS);
  const curveOf = (each: BumpStopStudy["law"]): readonly CurvePoint[] =>
    squeezes.map((x) => ({ x, y: bumpStopAt(each, Math.min(x, each.stroke)).force }));
  const push = curveOf(law);
  const stiff = law.kind === "rubber" ? curveOf(lawSpread(law).stiff) : [];
  return (
    <CurveChart
      label="Push of the bump stop as it is squeezed, until it is solid"
      across={{ title: "squeezed", dimension: "length", from: 0, to: law.stroke }}
      up={{ title: "Push", dimension: "force", from: 0, to: roomAbove([...push, ...stiff].map(({ y }) => y)) }}
      curves={[
        { name: "as reckoned with", points: push },
        ...(stiff.length > 0 ? [{ name: "stiffest", points: stiff }] : []),
      ]}
    />
  );
}
