import {
  type Car,
  type SpringNeed,
  type SpringPosition,
  type SpringStudy,
  type Study,
  springNeed,
  studySprings,
  withTrialSpring,
} from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { Reading } from "../words/Reading.tsx";
import { shown } from "../words/shown.ts";
import { INVENTED_SHELF } from "./invented-shelf.ts";
import { ShelfChoice } from "./ShelfChoice.tsx";

/** Where the car sits on its springs, and how stiff they are at droop, at rest and at bump; found when the hand rests. */
export function SpringsWork(): ReactNode {
  const study = useBench(({ live, moving }) => (moving ? null : live.study));
  if (!study) return null;
  const springs = studySprings(study);
  const tried = springs ?? studySprings(withTrial(study));
  return (
    <section className="springs-work" aria-label="Where the car sits">
      <h3>Where the car sits</h3>
      {springs ? <Sits springs={springs} /> : <p className="small">{missing(study.car)}</p>}
      {tried && <ShelfChoice study={study} springs={tried} />}
    </section>
  );
}

/** The study of a shock without springs with the first of the shelf on it, so that what it has to carry is known. */
function withTrial(study: Study): Study {
  const car = withTrialSpring(study.car, INVENTED_SHELF[0]!);
  return car === study.car ? study : { ...study, car, corner: { ...study.corner, car } };
}

const NEEDED: Readonly<Record<SpringNeed, string>> = {
  shock: "Place a shock first: springs sit on it.",
  springs: "Enter the shock's springs to see where the car sits, or choose them from a shelf.",
  "corner-weight": "Enter the corner weight in the step Stance to see where the car sits.",
  "unsprung-weight": "Enter the unsprung weight in the step Stance to see where the car sits.",
};

const missing = (car: Car): string => {
  const need = springNeed(car);
  return need ? NEEDED[need] : "These springs and weights leave nothing to carry, or the shock cannot carry it.";
};

function Sits({ springs }: { readonly springs: SpringStudy }): ReactNode {
  const units = useBench((state) => state.units);
  const { rest, left, frequency, crossover, preloadForDesign, looseAtDroop } = springs;
  return (
    <>
      <p>
        {rest.on === "bump-stop" && "The springs do not hold the car up: it sits on the bump stop. "}
        {rest.on === "droop-stop" && "The springs hold the car up at full droop. "}
        Against the car as drawn it rests at <Reading text={shown(rest.travel, "length", units, { sign: true })} />,
        with <Reading text={shown(left.bump, "length", units)} /> bump and{" "}
        <Reading text={shown(left.droop, "length", units)} /> droop left.
      </p>
      <table className="compare-table">
        <thead>
          <tr>
            <th scope="col">at</th>
            <th scope="col">travel</th>
            <th scope="col">shock force</th>
            <th scope="col">wheel rate</th>
            <th scope="col">frequency</th>
          </tr>
        </thead>
        <tbody>
          {springs.positions.map((each) => (
            <Row key={each.name} each={each} />
          ))}
        </tbody>
      </table>
      <ul className="small">
        {frequency.beyondCrossover !== null && <li>Past crossover {hertz(frequency.beyondCrossover)}.</li>}
        {crossover?.travel != null && (
          <li>
            The main spring is alone from <Reading text={shown(crossover.travel, "length", units, { sign: true })} /> of
            travel.
          </li>
        )}
        {preloadForDesign !== null && (
          <li>
            To sit as drawn, preload <Reading text={shown(preloadForDesign, "length", units)} />; now{" "}
            <Reading text={shown(springs.springs.preload, "length", units)} />.
          </li>
        )}
        {looseAtDroop > 0 && (
          <li>
            At full droop the springs are loose by <Reading text={shown(looseAtDroop, "length", units)} />.
          </li>
        )}
      </ul>
    </>
  );
}

const NAMES: Readonly<Record<SpringPosition["name"], string>> = {
  droop: "full droop",
  ride: "where it rests",
  bump: "full bump",
};

function Row({ each: { name, state, frequency } }: { readonly each: SpringPosition }): ReactNode {
  const units = useBench((bench) => bench.units);
  return (
    <tr>
      <th scope="row">{NAMES[name]}</th>
      <td>
        <Reading text={shown(state.travel, "length", units, { sign: true })} />
      </td>
      <td>{shown(state.shockForce, "force", units)}</td>
      <td>{state.springs.isSolid ? "solid" : shown(state.wheelRate, "rate", units)}</td>
      <td>{frequency === null ? "none" : hertz(frequency)}</td>
    </tr>
  );
}

const hertz = (value: number): string => `${value.toFixed(2)} Hz`;
