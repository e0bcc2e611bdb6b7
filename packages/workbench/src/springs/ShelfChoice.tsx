import {
  bandOf,
  chooseSprings,
  type SpringChoice,
  type SpringStudy,
  type Study,
  springOperations,
  USUAL_CROSSOVER_PAST,
} from "@armwright/engine";
import { type ReactNode, useState } from "react";
import { useBench } from "../app/use-bench.ts";
import { edit } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import { shown } from "../words/shown.ts";
import { INVENTED_SHELF } from "./invented-shelf.ts";

/** Shown of the ranked sets; the others differ little. */
const SHOWN = 5;

/** Sets of an invented shelf with which the car sits as drawn, best first; one is taken as one step. */
export function ShelfChoice({ study, springs }: { readonly study: Study; readonly springs: SpringStudy }): ReactNode {
  const units = useBench((state) => state.units);
  const [found, setFound] = useState<{ readonly of: Study; readonly fitting: readonly SpringChoice[] } | null>(null);
  const { car, corner } = study;
  const look = (): void => {
    const choices = chooseSprings(corner, springs.shockSpring, INVENTED_SHELF, {
      sprungMass: springs.sprungMass,
      ...(car.wheel.tyreRate !== undefined && { tyreRate: car.wheel.tyreRate }),
      stops: springs.stops,
      rideTravel: 0,
      band: bandOf(car.targets.use),
      crossoverPast: USUAL_CROSSOVER_PAST,
      collarPitch: springs.springs.collarPitch,
    });
    setFound({ of: study, fitting: choices?.fitting ?? [] });
  };
  const fitting = found?.of === study ? found.fitting : null;
  return (
    <>
      <h3>Springs from a shelf</h3>
      <button type="button" className="pressable" onClick={look}>
        Choose springs
      </button>
      <p role="status" className="small">
        {fitting && (fitting.length > 0 ? `${fitting.length} sets fit; the best first.` : "No set fits.")}
      </p>
      <ol className="spring-choices">
        {fitting?.slice(0, SHOWN).map((choice) => {
          const { main, tender, preloadTurns, frequency } = choice;
          const name = tender ? `${tender.name} over ${main.name}` : main.name;
          return (
            <li key={name}>
              {name}: preload <Reading text={shown(choice.springs.preload, "length", units)} /> (
              {preloadTurns.toFixed(1)} turns), {frequency.toFixed(2)} Hz.{" "}
              <button
                type="button"
                className="pressable take"
                onClick={() => edit(springOperations(choice.springs, car.units), `springs ${name}`)}
              >
                Take it<span className="unseen">: {name}</span>
              </button>
            </li>
          );
        })}
      </ol>
      <p className="small quiet">
        The shelf here is an invented one; your own: <code>npx armwright springs --shelf FILE</code>.
      </p>
    </>
  );
}
