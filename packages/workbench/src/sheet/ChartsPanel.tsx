import type { ReactNode } from "react";
import { Dialog } from "../app/Dialog.tsx";
import { useBench } from "../app/use-bench.ts";
import { pickCharts } from "../store/bench.ts";
import { chartIds } from "./chart-ids.ts";

/** Which curves stand beside the tape: up to five of everything the car has. */
export function ChartsPanel(): ReactNode {
  const study = useBench(({ live }) => live.study);
  const step = useBench((state) => state.step);
  const picked = useBench((state) => state.pickedCharts);
  if (!study) return null;
  const now = chartIds(study, step, picked);
  return (
    <Dialog title="Charts" note={`${now.length} of 5`}>
      <ul className="pick-list">
        {study.quantities.map(({ id, label, meaning }) => {
          const isOn = now.includes(id);
          return (
            <li key={id}>
              <label className="pressable">
                <input
                  type="checkbox"
                  checked={isOn}
                  disabled={!isOn && now.length >= 5}
                  onChange={() => pickCharts(isOn ? now.filter((each) => each !== id) : [...now, id])}
                />
                <span>
                  {label} <small className="quiet">{meaning}</small>
                </span>
              </label>
            </li>
          );
        })}
      </ul>
      <button type="button" className="pressable wide" onClick={() => pickCharts(null)}>
        The step's own charts
      </button>
    </Dialog>
  );
}
