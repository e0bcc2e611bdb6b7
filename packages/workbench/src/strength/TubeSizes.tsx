import { armWords, changeOperations, formatTube, type StrengthStudy, type TubeAlternative } from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { capital } from "../form/schema-fields.ts";
import { bench } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import { threeFigures } from "../words/three-figures.ts";
import { takeChange } from "./take-change.ts";
import { massChange, massWords } from "./tube-words.ts";

/** An arm's tubes one size up and down: what they weigh, and the factor of its weakest place then. */
export function TubeSizes({
  found,
  isLooking,
}: {
  readonly found: StrengthStudy;
  /** They are of the car before the last change. */
  readonly isLooking: boolean;
}): ReactNode {
  const arms = [...new Set(found.alternatives.map(({ arm }) => arm))];
  return arms.map((arm) => (
    <Arm key={arm} arm={arm} sizes={found.alternatives.filter((each) => each.arm === arm)} isOlder={isLooking} />
  ));
}

interface ArmProps {
  readonly arm: TubeAlternative["arm"];
  readonly sizes: readonly TubeAlternative[];
  readonly isOlder: boolean;
}

function Arm({ arm, sizes, isOlder }: ArmProps): ReactNode {
  const units = useBench((state) => state.units);
  const present = sizes.find(({ isPresent }) => isPresent);
  return (
    <>
      <h3>
        {capital(armWords(arm))}: another size{" "}
        <small>
          {isOlder
            ? "of the car before the last change; being found anew"
            : "all its main tubes together, in the case that is then the worst"}
        </small>
      </h3>
      <table className="compare-table sizes">
        <thead>
          <tr>
            <th scope="col">tube</th>
            <th scope="col">weakest factor</th>
            <th scope="col">weighs</th>
            <th scope="col">against now</th>
            <th scope="col">
              <span className="unseen">take it</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {sizes.map((each) => {
            const { size, factor, mass, isPresent } = each;
            const words = formatTube(size, units);
            return (
              <tr key={words} className={isPresent ? "is-present" : ""}>
                <th scope="row">
                  <Reading text={words} />
                </th>
                <td>{factor === null ? "not loaded" : threeFigures(factor)}</td>
                <td>{massWords(mass, units)}</td>
                <td>{isPresent || !present ? "as it is" : massChange(mass - present.mass, units)}</td>
                <td>
                  {!isPresent && (
                    <button type="button" className="take" aria-label={`Take ${words}`} onClick={() => take(each)}>
                      Take it
                    </button>
                  )}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </>
  );
}

function take({ arm, size }: TubeAlternative): void {
  const { live, document } = bench.getState();
  if (!document || !live.car) return;
  takeChange(changeOperations(live.car, arm, { main: size }), `${armWords(arm)}: ${formatTube(size, document.units)}`);
}
