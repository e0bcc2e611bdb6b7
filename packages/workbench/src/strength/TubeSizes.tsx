import { INCH, MILLIMETRE, type StrengthStudy, type TubeAlternative, type UnitSystem } from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { capital } from "../form/schema-fields.ts";
import { bench, edit } from "../store/bench.ts";
import { placeOnSide } from "../store/sides.ts";
import { Reading } from "../words/Reading.tsx";
import { threeFigures } from "../words/three-figures.ts";
import { massChange, massWords, tubeWords } from "./tube-words.ts";

/** An arm's tubes one size up and down: what they weigh, and the factor of its weakest place then. */
export function TubeSizes({ found }: { readonly found: StrengthStudy }): ReactNode {
  const arms = [...new Set(found.alternatives.map(({ arm }) => arm))];
  return arms.map((arm) => <Arm key={arm} arm={arm} sizes={found.alternatives.filter((each) => each.arm === arm)} />);
}

interface ArmProps {
  readonly arm: TubeAlternative["arm"];
  readonly sizes: readonly TubeAlternative[];
}

function Arm({ arm, sizes }: ArmProps): ReactNode {
  const units = useBench((state) => state.units);
  const present = sizes.find(({ isPresent }) => isPresent);
  return (
    <>
      <h3>
        {capital(arm.replace("-", " "))}: another size{" "}
        <small>all its main tubes together, in the case that is then the worst</small>
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
            const words = tubeWords(size, units);
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
  const { document, side } = bench.getState();
  if (!document) return;
  const name = arm.replace(/-(.)/, (_, letter: string) => letter.toUpperCase());
  edit(
    [
      { path: placeOnSide(`linkage.${name}.diameter`, side, document), value: bare(size.diameter, document.units) },
      { path: `strength.tubes.${name}.wall`, value: bare(size.wall, document.units) },
    ],
    `${arm.replace("-", " ")}: ${tubeWords(size, document.units)}`,
  );
}

/** In the document's own unit, to a thousandth of an inch or a tenth of a millimetre. */
const bare = (metres: number, units: UnitSystem): number =>
  units === "metric" ? Number((metres / MILLIMETRE).toFixed(1)) : Number((metres / INCH).toFixed(3));
