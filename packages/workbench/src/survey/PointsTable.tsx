import type { CarSurvey } from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { plusMinusLength } from "../words/plus-minus.ts";
import { Reading } from "../words/Reading.tsx";
import { shownLength } from "../words/shown.ts";

interface Props {
  readonly car: CarSurvey;
  readonly chosen: string | null;
  readonly onChoose: (name: string | null) => void;
}

const AXES = ["x", "y", "z"] as const;

/** Every named point with its three coordinates, each with its ±; a press shows what was read to it. */
export function PointsTable({ car, chosen, onChoose }: Props): ReactNode {
  const { survey, result } = car;
  const units = useBench((state) => state.units);
  return (
    <table className="compare-table points-table">
      <thead>
        <tr>
          <th scope="col">point, {units === "metric" ? "mm" : "in"}</th>
          <th scope="col">forward</th>
          <th scope="col">out</th>
          <th scope="col">up</th>
        </tr>
      </thead>
      <tbody>
        {result.points.map(({ name, at, sd }, index) => {
          const blind = result.undetermined
            .filter(({ point }) => point === index)
            .flatMap(({ way }) => AXES.filter((axis) => Math.abs(way[axis]) > 0.25));
          // Out is out on either side of the car.
          const value = { ...at, y: Math.abs(at.y) };
          const side = at.y < 0 ? " (right)" : "";
          return (
            <tr key={name} className={chosen === name ? "held" : undefined}>
              <th scope="row">
                <button
                  type="button"
                  aria-pressed={chosen === name}
                  onClick={() => onChoose(chosen === name ? null : name)}
                >
                  {name}
                  {side}
                </button>
              </th>
              {AXES.map((axis) =>
                blind.includes(axis) ? (
                  <td key={axis}>
                    ?<small className="unseen"> cannot be told</small>
                  </td>
                ) : (
                  <td key={axis}>
                    <Reading text={shownLength(value[axis], units)} />
                    <small>
                      {survey.points[index]?.fixed[axis] !== undefined ? (
                        "held"
                      ) : (
                        <Reading text={`± ${plusMinusLength(2 * sd[axis], units)}`} />
                      )}
                    </small>
                  </td>
                ),
              )}
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
