import {
  formatNumber,
  type SpringPosition,
  type SpringStudy,
  WEIGHT_ERROR,
  type WeightEffect,
} from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { Reading } from "../words/Reading.tsx";
import { bare, shown, unitShown } from "../words/shown.ts";

/** How the car stands on its springs, at both ends and where it rests. */
export function Sits({ springs }: { readonly springs: SpringStudy }): ReactNode {
  const units = useBench((state) => state.units);
  const { rest, left } = springs;
  const length = (metres: number): ReactNode => <Reading text={shown(metres, "length", units)} />;
  const isAsDrawn = shown(Math.abs(rest.travel), "length", units) === shown(0, "length", units);
  return (
    <>
      <p>
        {rest.on === "bump-stop" && "The springs do not hold the car up: it sits on the bump stop. "}
        {rest.on === "droop-stop" && "The springs hold the car up at full droop. "}
        {isAsDrawn ? (
          "It rests as drawn"
        ) : (
          <>
            It rests {length(Math.abs(rest.travel))} {rest.travel > 0 ? "lower" : "higher"} than drawn
          </>
        )}
        , with {length(left.bump)} of bump and {length(left.droop)} of droop left.
      </p>
      <table className="figures">
        <thead>
          <tr>
            <th scope="col">at</th>
            <th scope="col">travel, {unitShown("length", units)}</th>
            <th scope="col">shock, {unitShown("force", units)}</th>
            <th scope="col">wheel, {unitShown("force", units)}</th>
            <th scope="col">wheel rate, {unitShown("rate", units)}</th>
            <th scope="col">Hz</th>
          </tr>
        </thead>
        <tbody>
          {springs.positions.map((each) => (
            <Row key={each.name} each={each} />
          ))}
        </tbody>
      </table>
      <Facts springs={springs} />
    </>
  );
}

const NAMES: Readonly<Record<SpringPosition["name"], string>> = {
  droop: "full droop",
  ride: "at rest",
  bump: "full bump",
};

function Row({ each: { name, state, frequency } }: { readonly each: SpringPosition }): ReactNode {
  const units = useBench((bench) => bench.units);
  const { isSolid } = state.springs;
  return (
    <tr className={name === "ride" ? "main" : undefined}>
      <th scope="row">{NAMES[name]}</th>
      <td>
        <Reading text={bare(state.travel, "length", units, { sign: true })} />
      </td>
      <td>{isSolid ? "solid" : bare(state.shockForce, "force", units)}</td>
      <td>{isSolid ? "solid" : bare(state.wheelForce, "force", units)}</td>
      <td>{isSolid ? "solid" : bare(state.wheelRate, "rate", units)}</td>
      <td>{frequency === null ? "none" : formatNumber(frequency, 2)}</td>
    </tr>
  );
}

/** Preload, crossover, what a wrong weight does. */
function Facts({ springs: made }: { readonly springs: SpringStudy }): ReactNode {
  const units = useBench((state) => state.units);
  const { frequency, crossover, preloadForDesign, springs, weightError, rest, sagShare } = made;
  const length = (metres: number, sign = false): ReactNode => (
    <Reading text={shown(metres, "length", units, { sign })} />
  );
  const { preload, collarPitch } = springs;
  const wind = preloadForDesign === null ? 0 : (preloadForDesign - preload) / collarPitch;
  const share = formatNumber(100 * WEIGHT_ERROR, 0);
  return (
    <ul className="facts">
      <li>
        Preload {length(preload)}: {formatNumber(preload / collarPitch, 1)} turns of the collar.{" "}
        {preloadForDesign === null
          ? "No preload brings it to the drawn height: these are the wrong springs."
          : Math.abs(wind) < WORTH_A_TURN
            ? "That is right for the drawn height."
            : `To sit as drawn, ${turnsOf(wind)}.`}
      </li>
      {crossover && (
        <li>
          {crossover.travel === null ? (
            "Crossover lies outside the travel."
          ) : (
            <>
              Crossover at {length(crossover.travel, true)} of travel,{" "}
              {length(Math.abs(rest.state.shockLength - crossover.shockLength))} of shock{" "}
              {rest.state.shockLength > crossover.shockLength ? "past rest" : "before rest"}
              {crossover.by === "tender-solid" && ", because the tender goes solid"}; from there the main spring is
              alone
              {frequency.beyondCrossover !== null && <> at {formatNumber(frequency.beyondCrossover, 2)} Hz</>}.
            </>
          )}
        </li>
      )}
      <li>The car's weight takes up {formatNumber(100 * sagShare, 0)} % of the travel.</li>
      {weightError && (
        <li>
          With {share} % more sprung weight it sits {lowered(weightError.heavier, length)}; with {share} % less{" "}
          {lowered(weightError.lighter, length)}.
        </li>
      )}
    </ul>
  );
}

/** Fewer turns than this are not worth a wrench. */
const WORTH_A_TURN = 0.05;

const turnsOf = (turns: number): string =>
  `${formatNumber(Math.abs(turns), 1)} turns ${turns > 0 ? "down" : "back up"}`;

function lowered({ lower, turns }: WeightEffect, length: (metres: number) => ReactNode): ReactNode {
  return (
    <>
      {length(Math.abs(lower))} {lower > 0 ? "lower" : "higher"} ({turnsOf(turns)} mend it)
    </>
  );
}
