import { formatLength, formatNumber, type Study, type UnitSystem } from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { Reading } from "../words/Reading.tsx";
import { tidy } from "../words/shown.ts";

type TurnEffect = Study["adjusters"][number];

/** What one turn of each rod end or tube does at ride height; found anew when the hand rests. */
export function TurnEffects(): ReactNode {
  const study = useBench(({ live, moving }) => (moving ? null : live.study));
  if (!study) return null;
  const { adjusters, car } = study;
  if (adjusters.length === 0) return null;
  const holder = adjusters.find(({ camberHeld }) => camberHeld)?.camberHeld?.by;
  const isGuess = adjusters.some(({ advance }) => advance === null);
  return (
    <section className="turn-effects" aria-label="What a turn does">
      <h3>One turn that makes it longer, to begin with</h3>
      <table className="compare-table">
        <thead>
          <tr>
            <th scope="col">turn</th>
            <th scope="col">longer by</th>
            <th scope="col">camber</th>
            <th scope="col">toe</th>
            <th scope="col">toe at the rim</th>
          </tr>
        </thead>
        <tbody>
          {adjusters.map((each) => (
            <Row key={each.adjuster.id} each={each} rim={car.wheel.rimDiameter} />
          ))}
        </tbody>
      </table>
      {holder !== undefined && <Held adjusters={adjusters} holder={holder} />}
      <p className="small quiet">
        {isGuess && "* No thread is entered for it, so its turns cannot be counted: told for one step longer. "}
        Toe at the rim: front against rear, this wheel. Slopes at the present setting; they change a little as you turn.
      </p>
    </section>
  );
}

function Row({ each, rim }: { readonly each: TurnEffect; readonly rim: number }): ReactNode {
  const units = useBench((state) => state.units);
  const { adjuster, advance, perLength } = each;
  if (advance === 0) {
    return (
      <tr>
        <th scope="row">{adjuster.label}</th>
        <td colSpan={4}>nothing: both ends have the same thread, so turning the tube only moves it</td>
      </tr>
    );
  }
  const step = advance ?? (units === "metric" ? 0.001 : 0.0254 / 16);
  const toe = perLength && perLength.toe * step;
  return (
    <tr>
      <th scope="row">
        {adjuster.label}
        {advance === null && " *"}
      </th>
      <td>
        <Reading text={lengthOf(step, units)} />
      </td>
      <td>{angle(perLength && perLength.camber * step)}</td>
      <td>{angle(toe)}</td>
      <td>{toe === null ? "none" : <Reading text={lengthOf(Math.sin(toe) * rim, units, true)} />}</td>
    </tr>
  );
}

/** How to set toe with one and hold camber with another: the usual way to go about it. */
function Held({
  adjusters,
  holder,
}: {
  readonly adjusters: readonly TurnEffect[];
  readonly holder: string;
}): ReactNode {
  const name = adjusters.find(({ adjuster }) => adjuster.id === holder)?.adjuster.label ?? holder;
  return (
    <ul className="small">
      {adjusters.flatMap(({ adjuster, camberHeld }) =>
        camberHeld
          ? [
              <li key={adjuster.id}>
                To keep camber, turn the {name} {times(camberHeld.turns)} with each turn of the {adjuster.label}: toe
                then changes by {angle(camberHeld.toe)}.
              </li>,
            ]
          : [],
      )}
    </ul>
  );
}

const times = (turns: number): string => {
  const count = Math.abs(turns).toFixed(1);
  if (Number(count) === 0) return "hardly at all";
  return `${Number(count)} ${Number(count) === 1 ? "turn" : "turns"} ${turns > 0 ? "longer" : "shorter"}`;
};

/** To a hundredth: half a turn often moves less than a tenth. */
const angle = (radians: number | null): string =>
  radians === null ? "none" : tidy(`${sign(((radians * 180) / Math.PI).toFixed(2))} deg`);
const sign = (text: string): string =>
  text.startsWith("-") || Number(text) === 0 ? text.replace(/^-0\.00$/, "0.00") : `+${text}`;

/** Finer than a tape is read, in its own marks; what falls between them is said to be about the nearest. */
export function lengthOf(metres: number, units: UnitSystem, signed = false): string {
  if (units === "metric") return tidy(`${formatNumber(metres * 1000, 2, signed)} mm`);
  const style = { denominator: 64, sign: signed } as const;
  const isOnMark = Math.abs(((metres / 0.0254) * 64) % 1) < 0.05 || Math.abs(((metres / 0.0254) * 64) % 1) > 0.95;
  return tidy(`${isOnMark || signed ? "" : "about "}${formatLength(metres, units, style)} in`);
}
