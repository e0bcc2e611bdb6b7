import { coilRate, coilStress, coilsForRate, formatNumber, SPRING_STEEL, solidLengthOf } from "@armwright/engine";
import { type ReactNode, useState } from "react";
import { useBench } from "../app/use-bench.ts";
import { ValueEntry } from "../mounts/ValueEntry.tsx";
import { Reading } from "../words/Reading.tsx";
import { shown } from "../words/shown.ts";

const INCH = 0.0254;
/** A usual coil-over spring to begin with, from memory: 7/16 in wire, 3 3/8 in over the coils. */
const START = { wire: (7 / 16) * INCH, outside: 3.375 * INCH, coils: 9, free: 12 * INCH };
/** Coils narrower than this are not wound: mean diameter over wire. */
const LEAST_INDEX = 2;

/** A spring that has no mark: its rate from wire, diameter and coils, the coils for a rate, and the stress in the wire. */
export function WirePart(): ReactNode {
  const units = useBench((state) => state.units);
  const [coil, setCoil] = useState(START);
  const { wire, outside, coils, free } = coil;
  const meanDiameter = outside - wire;
  const body = { wire, meanDiameter, shearModulus: SPRING_STEEL };
  const isPossible = meanDiameter / wire >= LEAST_INDEX;
  const rate = coilRate({ ...body, activeCoils: coils });
  const solid = solidLengthOf(wire, coils + DEAD_COILS, "squared");
  const force = rate * (free - solid);
  const decimals = units === "metric" ? 2 : 3;
  const change = (part: Partial<typeof START>): void => setCoil({ ...coil, ...part });
  return (
    <details className="item">
      <summary className="pressable">
        <span>Rate of a spring without a mark</span>
        <span className="quiet">from its wire</span>
      </summary>
      <div className="two-wide">
        <ValueEntry
          label="Wire, across"
          value={wire}
          least={1e-4}
          decimals={decimals}
          onEnter={(value) => change({ wire: value })}
        />
        <ValueEntry
          label="Over the coils"
          value={outside}
          least={1e-3}
          decimals={decimals}
          onEnter={(value) => change({ outside: value })}
        />
        <ValueEntry
          label="Active coils"
          dimension="turns"
          unit="coils"
          value={coils}
          least={0.5}
          onEnter={(value) => change({ coils: value })}
        />
        <ValueEntry label="Free length" value={free} least={1e-3} onEnter={(value) => change({ free: value })} />
        {isPossible && (
          <ValueEntry
            label="Rate: type one for its coils"
            dimension="rate"
            value={rate}
            least={1}
            onEnter={(value) => change({ coils: coilsForRate(body, value) })}
          />
        )}
      </div>
      {isPossible ? (
        <p>
          <b>{shown(rate, "rate", units)}</b>. Solid at about <Reading text={shown(solid, "length", units)} />
          {free > solid ? (
            <>
              , with {shown(force, "force", units)} on it and {shown(coilStress(body, force), "stress", units)} in the
              wire.
            </>
          ) : (
            ": longer than it is free, so it is not that many coils."
          )}
        </p>
      ) : (
        <p className="short">Such a wire does not go round such a coil: look at both diameters.</p>
      )}
      <p className="small quiet">
        The rate goes with the fourth power of the wire: take it with a caliper. One more dead coil at each end (common
        practice: squared and ground). k = G·d⁴ / (8·D³·N), stress with the Wahl factor (Bhandari, Design of Machine
        Elements, ch. 10); G {formatNumber(SPRING_STEEL / 1e9, 1)} GPa, from memory. What the wire bears, its maker
        says.
      </p>
    </details>
  );
}

const DEAD_COILS = 2;
