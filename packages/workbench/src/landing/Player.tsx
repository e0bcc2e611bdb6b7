import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { shownFigures } from "../words/three-figures.ts";
import { endOf, valueAt } from "./at-time.ts";
import { landingBench, type Made, useLanding } from "./landing-store.ts";
import { setPlaying, showTime } from "./use-playback.ts";

const PACES = [
  [1, "real time"],
  [0.25, "a quarter"],
  [0.1, "a tenth"],
] as const;

/** Play, stand still, and a slider through the event: by hand, finger or arrow keys. */
export function Player({ made }: { readonly made: Made }): ReactNode {
  const units = useBench((state) => state.units);
  const { time, isPlaying, pace } = useLanding((state) => state);
  const { history } = made.answer.landing;
  const end = endOf(history);
  const load = valueAt(history, history.wheelLoad, time);
  return (
    <div className="player">
      <button
        type="button"
        className="pressable take"
        aria-pressed={isPlaying}
        data-play
        onClick={() => setPlaying(!isPlaying)}
      >
        <svg className="mark" width="18" height="18" viewBox="0 0 18 18" aria-hidden="true">
          {isPlaying ? <path d="M5 3v12M13 3v12" /> : <path className="full" d="M4 2l11 7-11 7z" />}
        </svg>
        {isPlaying ? "Stand still" : "Play"}
      </button>
      <input
        type="range"
        min={0}
        max={end}
        step={0.01}
        value={Math.min(end, time)}
        aria-label="Time of the landing"
        aria-valuetext={`${time.toFixed(2)} seconds, wheel load ${shownFigures(load, "force", units)}`}
        onChange={(event) => {
          setPlaying(false);
          showTime(Number(event.target.value));
        }}
      />
      <output className="small">
        {time.toFixed(2)} of {end.toFixed(2)} s
      </output>
      <fieldset className="event-kinds paces">
        <legend className="unseen">Pace</legend>
        {PACES.map(([value, words]) => (
          <label key={value} className={value === pace ? "on" : ""}>
            <input
              type="radio"
              name="pace"
              className="unseen"
              checked={value === pace}
              onChange={() => landingBench.setState({ pace: value })}
            />
            {words}
          </label>
        ))}
      </fieldset>
    </div>
  );
}
