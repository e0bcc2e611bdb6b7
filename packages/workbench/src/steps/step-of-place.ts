import { STEPS, type StepId } from "./steps.ts";

/** The step at which a place of the document is entered: the longest of its places that the given one lies in. */
export function stepOfPlace(place: string): StepId {
  const known = found.get(place);
  if (known) return known;
  const step = findStep(place);
  found.set(place, step);
  return step;
}

/** Asked for every finding of every study while a point is dragged. */
const found = new Map<string, StepId>();

function findStep(place: string): StepId {
  const path = plain(place);
  let best: { readonly id: StepId; readonly length: number } | undefined;
  for (const { id, places } of STEPS) {
    for (const each of places) {
      const prefix = plain(each);
      if (!isWithin(path, prefix) || (best && best.length >= prefix.length)) continue;
      best = { id, length: prefix.length };
    }
  }
  if (best) return best.id;
  if (isWithin(path, "linkage")) return "arms";
  if (isWithin(path, "wheel")) return "stance";
  return "check";
}

const isWithin = (path: string, prefix: string): boolean =>
  path === prefix || path.startsWith(`${prefix}.`) || path.startsWith(`${prefix}[`);

/** List counts and link names do not matter to the order of work. */
const plain = (place: string): string => place.replace(/^right\./, "").replace(/\[(?:\d+|\*)\]/g, "[]");
