import { type Study, solveAt, type UnitSystem } from "@armwright/engine";
import { type CarDocument, type Operation, valueAt } from "@armwright/engine/document";
import { lengthAsTyped } from "../form/typed.ts";
import { bench } from "../store/bench.ts";
import { placeOnSide } from "../store/sides.ts";
import { shownLength } from "../words/shown.ts";

/** What moving a chosen stop to a travel means for the car, and in words. */
export interface StopChange {
  readonly operations: readonly Operation[];
  readonly words: string;
}

/**
 * The edits that make the chosen stop end the travel at `travel` (m): another strap, another bump stop, another travel
 * aimed at. Null where a drag cannot do it, e.g. because the shock itself is the stop.
 */
export function stopAt(...given: Parameters<typeof changeAt>): StopChange | null {
  const change = changeAt(...given);
  const { side } = bench.getState();
  return (
    change && {
      ...change,
      operations: change.operations.map(({ path, value }) => ({ path: placeOnSide(path, side, given[2]), value })),
    }
  );
}

function changeAt(
  direction: "bump" | "droop",
  travel: number,
  document: CarDocument,
  study: Study,
  units: UnitSystem,
): StopChange | null {
  const chosen = study.car.stops[direction];
  const typed = (metres: number) => lengthAsTyped(metres, units, document.units);
  if (chosen.by === "travel") {
    if (direction === "bump" ? travel <= 0 : travel >= 0) return null;
    const size = Math.abs(travel);
    const place =
      typeof valueAt(document, ["stops", direction]) === "undefined" && document.targets?.[direction] !== undefined
        ? "targets"
        : "stops";
    return {
      operations: [{ path: `${place}.${direction}`, value: typed(size) }],
      words: `travel aimed at in ${direction}: ${shownLength(size, units)}`,
    };
  }
  if (chosen.by === "shock") return null;
  const solved = solveAt(study.corner, travel);
  if (!solved) return null;
  const read = (id: string): number | null =>
    study.quantities.find((quantity) => quantity.id === id)?.read(solved.row, study.corner) ?? null;
  const { strap, bumpStop } = study.car;
  if (chosen.by === "strap" && strap) {
    const slack = read("strapSlack");
    const length = slack === null ? 0 : strap.length - slack;
    if (length <= 0) return null;
    return {
      operations: [{ path: "strap.length", value: typed(length) }],
      words: `strap ${shownLength(length, units)}, tab to tab`,
    };
  }
  if (chosen.by === "bump-stop" && bumpStop) {
    const left = read("bumpStopLeft");
    if (left === null) return null;
    const solid = bumpStop.solid + left;
    const reach = bumpStop.reach + left;
    if (solid <= 0.003) return null;
    return {
      operations: [
        { path: "bumpStop.reach", value: typed(reach) },
        { path: "bumpStop.solid", value: typed(solid) },
      ],
      words: `bump stop with its foot ${left > 0 ? "built up" : "shortened"}: ${shownLength(reach, units)} to its face, ${shownLength(solid, units)} solid`,
    };
  }
  return null;
}
