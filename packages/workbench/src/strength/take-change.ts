import type { Operation } from "@armwright/engine/document";
import { bench, edit } from "../store/bench.ts";
import { placeOnSide } from "../store/sides.ts";

/** Makes a change of an arm: diameters on the side that is shown, walls and plates for both. */
export function takeChange(operations: readonly Operation[], words: string): void {
  const { side, document } = bench.getState();
  edit(
    operations.map((each) =>
      each.path.startsWith("linkage.") ? { ...each, path: placeOnSide(each.path, side, document) } : each,
    ),
    words,
  );
}
