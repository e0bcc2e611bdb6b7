import { type ReactNode, useState } from "react";
import type { PointEntry } from "./survey-document.ts";

interface Props {
  readonly taken: readonly string[];
  readonly onName: (point: PointEntry) => void;
  readonly onGiveUp: () => void;
}

/** A point is named in the builder's own words; its side tells left from right. */
export function NewPoint({ taken, onName, onGiveUp }: Props): ReactNode {
  const [name, setName] = useState("");
  const [side, setSide] = useState<"left" | "right" | "centre">("left");
  const trimmed = name.trim();
  const isTaken = taken.includes(trimmed);
  const isReady = trimmed !== "" && !isTaken;
  return (
    <form
      className="new-point"
      onSubmit={(event) => {
        event.preventDefault();
        event.stopPropagation();
        if (isReady) onName({ name: trimmed, side });
      }}
    >
      <div className="field">
        <label htmlFor="new-point-name">What the new point is called</label>
        <div className="entry">
          <input
            id="new-point-name"
            // biome-ignore lint/a11y/noAutofocus: naming it was asked for.
            autoFocus
            value={name}
            autoComplete="off"
            placeholder="upper bracket"
            onChange={(event) => setName(event.target.value)}
          />
        </div>
      </div>
      <div className="field">
        <label htmlFor="new-point-side">side of the car</label>
        <div className="entry">
          <select
            id="new-point-side"
            value={side}
            onChange={(event) => setSide(event.target.value as "left" | "right" | "centre")}
          >
            <option value="left">left</option>
            <option value="right">right</option>
            <option value="centre">centre</option>
          </select>
        </div>
      </div>
      {isTaken && <p className="fault">There is a point called that already.</p>}
      <div className="problem-actions">
        <button type="submit" className="pressable take" disabled={!isReady}>
          Name it
        </button>
        <button type="button" className="pressable quiet" onClick={onGiveUp}>
          No new point
        </button>
      </div>
    </form>
  );
}
