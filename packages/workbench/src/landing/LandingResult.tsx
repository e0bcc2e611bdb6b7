import { STANDARD_GRAVITY, typedLength, type UnitSystem, USUAL_GYRATION } from "@armwright/engine";
import type { ReactNode } from "react";
import { GravityMark } from "../app/Mark.tsx";
import { useBench } from "../app/use-bench.ts";
import { capital } from "../form/schema-fields.ts";
import { addCases } from "../loads/edit-cases.ts";
import { bench } from "../store/bench.ts";
import { Reading } from "../words/Reading.tsx";
import { shown, travelSaid } from "../words/shown.ts";
import { shownFigures, threeFigures } from "../words/three-figures.ts";
import { HistoryCharts } from "./HistoryCharts.tsx";
import type { LandingAnswer } from "./landing-job.ts";
import type { Made } from "./landing-store.ts";
import { Player } from "./Player.tsx";
import { showTime } from "./use-playback.ts";

/** What came of it: in words, played back, drawn over time, the worst of it, and as load cases. */
export function LandingResult({ made }: { readonly made: Made }): ReactNode {
  const { answer, title } = made;
  return (
    <>
      <h3>{capital(title)}</h3>
      <Told answer={answer} />
      <Player made={made} />
      <HistoryCharts made={made} />
      <Peaks answer={answer} />
      <Cases made={made} />
      <Assumed answer={answer} made={made} />
    </>
  );
}

const times = (count: number): string => (count === 1 ? "once" : count === 2 ? "twice" : `${count} times`);

function Told({ answer }: { readonly answer: LandingAnswer }): ReactNode {
  const units = useBench((state) => state.units);
  const { landing, stops, toRim, other } = answer;
  const { bottomings, stopTouches, strapSnatches, travel, airTime, tyrePressed } = landing;
  const isOnRim = tyrePressed > toRim;
  return (
    <>
      <p className="told" data-bottomings={bottomings}>
        {bottomings > 0 ? (
          <>
            <GravityMark gravity="must" /> <b>It bottoms {times(bottomings)}:</b> metal on metal, or the stop solid.
          </>
        ) : (
          <b>It does not bottom.</b>
        )}
      </p>
      <p className="small">
        Travel used: <Reading text={travelSaid(travel.bump, units)} /> to{" "}
        <Reading text={travelSaid(travel.droop, units)} />; the stops are at{" "}
        <Reading text={travelSaid(stops.bump, units)} /> and <Reading text={travelSaid(stops.droop, units)} />.
        {stopTouches > 0 && ` Bump stop touched ${times(stopTouches)}.`}
        {strapSnatches > 0 && ` Strap pulled tight ${times(strapSnatches)}.`}
        {airTime > 0 && ` Tyre off the ground for ${threeFigures(airTime)} s in all.`}{" "}
        {isOnRim ? (
          <b>
            The tyre is pressed onto its rim (<Reading text={shown(tyrePressed, "length", units)} />
            ): real loads are higher from there on.
          </b>
        ) : (
          <>
            Tyre pressed in by up to <Reading text={shown(tyrePressed, "length", units)} />.
          </>
        )}
        {other &&
          ` The body rolls by up to ${((Math.max(other.roll.most, -other.roll.least) * 180) / Math.PI).toFixed(1)}°.`}
      </p>
    </>
  );
}

function Peaks({ answer }: { readonly answer: LandingAnswer }): ReactNode {
  const units = useBench((state) => state.units);
  const { landing, carried, other } = answer;
  const { peaks } = landing;
  const force = (value: number): string => shownFigures(value, "force", units);
  const speed = (value: number): string => shownFigures(value, "speed", units);
  const g = (value: number): string => `${threeFigures(value / STANDARD_GRAVITY)}\u00a0g`;
  const rows = [
    ["wheelLoad", "wheel load", force, `${threeFigures(peaks.wheelLoad.value / carried)} times standing`],
    ["shockForce", "shock, springs and damper", force, ""],
    ["shockSpeedIn", "shock going in", speed, ""],
    ["shockSpeedOut", "shock coming out", speed, ""],
    ["stopForce", "bump stop", force, ""],
    ["strapForce", "strap", force, ""],
    ["bodyAcceleration", "body pushed up", g, "over standing"],
  ] as const;
  return (
    <>
      <h3>
        The worst of it <small>press one to go there</small>
      </h3>
      <table className="compare-table peaks">
        <thead>
          <tr>
            <th scope="col">what</th>
            <th scope="col">most</th>
            {other && <th scope="col">other wheel</th>}
            <th scope="col" className="after">
              after
            </th>
            <th scope="col">wheel at</th>
          </tr>
        </thead>
        <tbody>
          {rows
            .filter(([id]) => peaks[id].value > 0)
            .map(([id, label, say, note]) => (
              <tr key={id} data-peak={id}>
                <th scope="row">
                  <button type="button" className="to-case" onClick={() => showTime(peaks[id].time)}>
                    {label}
                  </button>
                </th>
                <td>
                  <b>{say(peaks[id].value)}</b>
                  {note !== "" && <span className="quiet">, {note}</span>}
                </td>
                {other && <td>{say(other.landing.peaks[id].value)}</td>}
                <td className="after">{`${peaks[id].time.toFixed(2)}\u00a0s`}</td>
                <td className="travel">
                  <Reading text={travelSaid(peaks[id].travel, units)} />
                </td>
              </tr>
            ))}
        </tbody>
      </table>
    </>
  );
}

/** Its peaks as load cases: the steps Loads and Strength then work with them. */
function Cases({ made }: { readonly made: Made }): ReactNode {
  const { cases } = made.answer;
  if (cases.length === 0) return null;
  const place = (travel: number) => typedLength(travel, bench.getState().document?.units ?? "inch-pound");
  return (
    <>
      <p className="small">
        As load cases: {cases.map(({ name, vertical }) => `${name} (${threeFigures(vertical)} g)`).join("; ")}.
      </p>
      <p className="adders">
        <button
          type="button"
          className="pressable"
          onClick={() => addCases(cases, `peaks of ${made.title} as load cases`, place)}
        >
          Put them among the load cases
        </button>
      </p>
    </>
  );
}

function Assumed({ answer, made }: { readonly answer: LandingAnswer; readonly made: Made }): ReactNode {
  const units = useBench((state) => state.units);
  const { landing, heat } = answer;
  const goesOn = made.event.kind === "road" || made.event.kind === "whoops";
  return (
    <details className="small">
      <summary className="pressable">Heat in the damper, and what this takes for granted</summary>
      <ul className="plain">
        <li>
          The damper turns {shownFigures(landing.damper.work, "energy", units)} into heat,{" "}
          {threeFigures(landing.damper.meanPower)} W on average.
          {goesOn &&
            ` Were it to go on: warmer by ${warmer(heat.risePerMinute, units)} in the first minute, in the end by about ${warmer(heat.settlesAt, units)} over the air. A trend only: heat capacity and cooling are from memory.`}
        </li>
        {answer.assumed.map(({ what, value }) => (
          <li key={what}>Assumed: {ASSUMED[what](value ?? 0, units)}.</li>
        ))}
        {answer.other && (
          <li>Assumed: the body’s radius of gyration in roll {USUAL_GYRATION} of half the track, from memory.</li>
        )}
        {landing.energy.off !== null && (
          <li>Energy comes out even to {landing.energy.off.toExponential(0)} of what moved.</li>
        )}
      </ul>
    </details>
  );
}

const warmer = (kelvin: number, units: UnitSystem): string =>
  units === "metric" ? `${Math.round(kelvin)} °C` : `${Math.round(kelvin * 1.8)} °F`;

const ASSUMED: Readonly<
  Record<LandingAnswer["assumed"][number]["what"], (value: number, units: UnitSystem) => string>
> = {
  "tyre-rate": (value, units) =>
    `tyre rate ${shownFigures(value, "rate", units)}, from memory: press the tyre on a scale`,
  "tyre-damping": (value, units) => `tyre damping ${shownFigures(value, "damping", units)}, from memory`,
  damper: () =>
    "damper 0.3 of critical going in, 0.55 coming out, in proportion to speed (common practice): real shocks flatten when fast, enter its curve in the step Springs",
  "bump-stop": () => "bump stop a rubber pad of common size and hardness: a factor of two either way",
  strap: () => "strap stretch by common practice",
};
