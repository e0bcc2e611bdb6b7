import {
  type Car,
  EMULSION_RISE,
  formatNumber,
  ROAD_CLASSES,
  type RoadClass,
  type RoadHeat,
  roadHeat,
  type Shock,
  USUAL_TYRE_RATE,
} from "@armwright/engine";
import { type ReactNode, useState } from "react";
import { useBench } from "../app/use-bench.ts";
import { ValueEntry } from "../mounts/ValueEntry.tsx";
import { shown } from "../words/shown.ts";

const MILE = 1609.344;
const KILOMETRE = 1000;
const HOUR = 3600;
/** About 34 mph, m/s. */
const START_SPEED = 15;

/** What roads of a class are like: from memory, no source. */
const ROADS: Readonly<Record<RoadClass, string>> = {
  A: "new pavement",
  B: "good pavement",
  C: "worn pavement, good dirt",
  D: "bad dirt road",
  E: "very bad dirt road, washboard",
  F: "two-track, ruts",
  G: "rough open desert",
  H: "hardly a road",
};

const VERDICTS: Readonly<Record<RoadHeat["verdict"], string>> = {
  "emulsion-enough": "An emulsion shock is enough for that.",
  "reservoir-worth-it": "More than an emulsion shock likes: a reservoir is worth its money.",
  "too-hot-for-either":
    "More than one shock of this size sheds, reservoir or not: slow down, or take a bigger or a second one.",
};

/** Energy that a rough road puts into one shock, how warm that makes it, and whether an emulsion shock will do. */
export function HeatPart({ car, shock }: { readonly car: Car; readonly shock: Shock }): ReactNode {
  const units = useBench((state) => state.units);
  const [road, setRoad] = useState<RoadClass>("D");
  const [speed, setSpeed] = useState(START_SPEED);
  const isMetric = units === "metric";
  const pace = (isMetric ? KILOMETRE : MILE) / HOUR;
  const { tyreRate } = car.wheel;
  const heat = roadHeat(shock, tyreRate ?? USUAL_TYRE_RATE, road, speed);
  const distance = isMetric ? "km" : "mile";
  const degrees = (kelvin: number): string =>
    isMetric ? `${formatNumber(kelvin, 0)} °C` : `${formatNumber(kelvin * 1.8, 0)} °F`;
  const isTooHot = shock.gas?.kind === "emulsion" && heat.verdict !== "emulsion-enough";
  return (
    <details className="item">
      <summary className="pressable">
        <span>Heat on a rough road</span>
        <span className="quiet">{VERDICT_SHORT[heat.verdict]}</span>
      </summary>
      <div className="two-wide">
        <label className="field">
          <span>Road, by ISO 8608 class</span>
          <span className="entry">
            <select value={road} onChange={(event) => setRoad(event.target.value as RoadClass)}>
              {ROAD_CLASSES.map((each) => (
                <option key={each} value={each}>
                  {each}, {ROADS[each]}
                </option>
              ))}
            </select>
          </span>
        </label>
        <ValueEntry
          label="Speed on it"
          dimension="count"
          unit={isMetric ? "km/h" : "mph"}
          value={Math.round(speed / pace)}
          least={1}
          onEnter={(value) => setSpeed(Math.min(value, FASTEST / pace) * pace)}
        />
      </div>
      <table className="figures">
        <tbody>
          <tr>
            <th scope="row">into each shock</th>
            <td>
              {formatNumber((heat.perMetre * (isMetric ? KILOMETRE : MILE)) / 1000, 0)} kJ a {distance}
            </td>
            <td>{formatNumber(heat.power, 0)} W</td>
          </tr>
          <tr>
            <th scope="row">body alone, over air</th>
            <td>{degrees(heat.riseEmulsion)}</td>
            <td>mostly in {formatNumber(heat.warmsIn / 60, 0)} min</td>
          </tr>
          <tr>
            <th scope="row">with a reservoir</th>
            <td>{degrees(heat.riseReservoir)}</td>
            <td />
          </tr>
        </tbody>
      </table>
      <p className={isTooHot ? "short" : undefined}>
        {VERDICTS[heat.verdict]} {isTooHot && "The car's shock is an emulsion one."}
      </p>
      <p className="small quiet">
        Good to a factor of two: the wheel never leaves the ground (on whoops it does, and less goes in), plain air flow
        and an emulsion shock's limit of {degrees(EMULSION_RISE)} over the air from memory,{" "}
        {tyreRate === undefined
          ? `the tyre's rate assumed, ${shown(USUAL_TYRE_RATE, "rate", units)}`
          : "the car's own tyre rate"}
        . Springs and damping do not matter to it.
      </p>
    </details>
  );
}

const VERDICT_SHORT: Readonly<Record<RoadHeat["verdict"], string>> = {
  "emulsion-enough": "emulsion is enough",
  "reservoir-worth-it": "take a reservoir",
  "too-hot-for-either": "too hot for either",
};

/** No road of these classes is driven faster, m/s. */
const FASTEST = 60;
