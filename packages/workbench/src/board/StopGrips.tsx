import { heightOf, type TapeScale } from "@armwright/drawing";
import type { Study } from "@armwright/engine";
import type { KeyboardEvent, ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { bench, edit, hold, say } from "../store/bench.ts";
import { bigStepOf, snapped, stepOf, travelWords } from "../words/shown.ts";
import { stopAt } from "./stop-drag.ts";

/** The chosen stops as the keyboard and a screen reader know them; mouse and finger take the blocks on the tape itself. */
export function StopGrips({ study, scale }: { readonly study: Study; readonly scale: TapeScale }): ReactNode {
  const units = useBench((state) => state.units);
  const press = (event: KeyboardEvent, direction: "bump" | "droop"): void => {
    const way = event.key === "ArrowUp" ? 1 : event.key === "ArrowDown" ? -1 : 0;
    if (way === 0) return;
    event.preventDefault();
    event.stopPropagation();
    const step = event.shiftKey ? bigStepOf(units) : stepOf(units);
    const { document } = bench.getState();
    const to = snapped(study.travel[direction].stop.travel + way * step, units);
    const change = document && stopAt(direction, to, document, study, units);
    if (change) edit(change.operations, change.words);
    else say("this stop cannot be moved here");
  };
  return (["bump", "droop"] as const).map((direction) => {
    const { travel } = study.travel[direction].stop;
    return (
      <button
        key={direction}
        type="button"
        className="stop-grip"
        style={{
          left: scale.blade.x - 6,
          top: heightOf(scale, travel) - 24,
          width: scale.blade.width + 20,
          height: 48,
        }}
        aria-label={`Stop in ${direction} at ${travelWords(travel, units)}: arrow keys move it`}
        onFocus={() => hold({ place: `stops.${direction}`, as: "stop" })}
        onKeyDown={(event) => press(event, direction)}
      />
    );
  });
}
