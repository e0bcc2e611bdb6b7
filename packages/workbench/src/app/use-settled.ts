import type { CarDocument } from "@armwright/engine/document";
import { useBench } from "./use-bench.ts";

/**
 * The document as it stood before the movement of the hand that is going on, else as it stands. For what depends on which
 * parts and names a car has and not on its numbers: a drag changes numbers only.
 */
export const useSettledDocument = (): CarDocument | null =>
  useBench(({ document, moving }) => (moving ? moving.from : document));
