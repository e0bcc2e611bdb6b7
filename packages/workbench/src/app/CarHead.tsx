import type { ReactNode } from "react";
import { useStore } from "zustand";
import { redo, setSide, setTheme, setUnits, showPanel, undo } from "../store/bench.ts";
import { connection } from "../store/connection.ts";
import { RedoMark, UndoMark } from "./Mark.tsx";
import { useSaved } from "./saved.ts";
import { useBench } from "./use-bench.ts";

/** The car's name and the way to the files. */
export function CarHead(): ReactNode {
  const file = useStore(connection, (state) => state.name);
  const name = useBench(({ document }) => document?.name ?? file ?? "No car");
  const isUnreadable = useBench(({ unreadable }) => unreadable.length > 0);
  const kind = useBench(({ live }) => live.study?.car.linkage.kind);
  const side = useBench((state) => state.side);
  const hasRight = useBench(({ document }) => document?.right !== undefined);
  return (
    <header className="car-head">
      <p className="own">Armwright</p>
      <h1>
        <button type="button" onClick={() => showPanel({ kind: "files" })} title={name}>
          {name}
        </button>
      </h1>
      <p className="small quiet corner">
        {isUnreadable
          ? "its file cannot be read"
          : kind === undefined
            ? "nothing on the bench"
            : hasRight
              ? KIND[kind]
              : `${KIND[kind]}, left rear corner`}
        {hasRight && kind !== undefined && (
          <button type="button" onClick={() => setSide(side === "left" ? "right" : "left")}>
            {side} rear corner<span className="unseen">: show the other side</span>
          </button>
        )}
      </p>
    </header>
  );
}

const KIND = {
  "h-arm": "H-arm",
  "double-a-arm": "A-arms",
  "trailing-arm": "Trailing arm",
  "five-link": "Five links",
} as const;

/** Undo, units, theme, files, and where the work is kept. */
export function BenchFoot(): ReactNode {
  const units = useBench((state) => state.units);
  const theme = useBench((state) => state.theme);
  const done = useBench(({ undoing }) => undoing.done.at(-1)?.words);
  const undone = useBench(({ undoing }) => undoing.undone.at(-1)?.words);
  const saved = useSaved();
  const takeNewer = useBench((state) => state.takeNewer);
  return (
    <footer className="bench-foot">
      <div className="two">
        <button type="button" className="pressable" disabled={done === undefined} onClick={undo} title={done}>
          <UndoMark /> Undo
        </button>
        <button
          type="button"
          className="pressable square"
          disabled={undone === undefined}
          onClick={redo}
          aria-label="Redo"
          title={undone}
        >
          <RedoMark />
        </button>
        <fieldset className="units">
          <legend className="unseen">Units</legend>
          {(["inch-pound", "metric"] as const).map((system) => (
            <label key={system} className={units === system ? "on" : undefined}>
              <input
                type="radio"
                name="units"
                className="unseen"
                checked={units === system}
                onChange={() => setUnits(system)}
              />
              {system === "metric" ? "mm" : "in"}
            </label>
          ))}
        </fieldset>
      </div>
      <div className="two">
        <button type="button" className="pressable" onClick={() => showPanel({ kind: "files" })}>
          Cars
        </button>
        <button type="button" className="pressable" onClick={() => showPanel({ kind: "compare" })}>
          Compare
        </button>
        <button
          type="button"
          className="pressable"
          aria-label={`Light: ${theme === "auto" ? "as the device" : theme}`}
          onClick={() => setTheme(theme === "auto" ? "light" : theme === "light" ? "dark" : "auto")}
        >
          {theme === "auto" ? "Auto" : theme === "light" ? "Light" : "Dark"}
        </button>
      </div>
      {takeNewer && (
        <button type="button" className="pressable small" onClick={takeNewer}>
          A newer page is ready: show it
        </button>
      )}
      <p className="small quiet saved">{saved}</p>
    </footer>
  );
}
