import { readSpringShelf, type SpringShelf } from "@armwright/engine";

const KEY = "armwright.springs-shelf";

/** A shelf as it was brought: its text, and the units that it is read in where it names none. */
export interface BroughtShelf {
  readonly file: string;
  readonly text: string;
  readonly units: "metric" | "inch-pound";
}

/** The shelf of springs that this browser keeps, read anew: nothing in the storage is trusted. */
export function keptShelf(): SpringShelf | null {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? "null");
    if (typeof kept !== "object" || kept === null) return null;
    const { file, text, units } = kept as Readonly<Record<string, unknown>>;
    if (typeof file !== "string" || typeof text !== "string") return null;
    const reading = readSpringShelf(text, file, units === "metric" ? "metric" : "inch-pound");
    return reading.ok ? reading.shelf : null;
  } catch {
    return null;
  }
}

/** Null takes it away. */
export function keepShelf(shelf: BroughtShelf | null): void {
  try {
    if (shelf) localStorage.setItem(KEY, JSON.stringify(shelf));
    else localStorage.removeItem(KEY);
  } catch {
    // A browser that keeps nothing still works.
  }
}
