import { readShockShelf, type ShockShelf } from "@armwright/engine";

const KEY = "armwright.shocks-shelf";

/** The shelf that this browser keeps, read anew: nothing in the storage is trusted. */
export function keptShelf(): ShockShelf | null {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? "null");
    if (typeof kept !== "object" || kept === null) return null;
    const { file, text, units } = kept as Readonly<Record<string, unknown>>;
    if (typeof file !== "string" || typeof text !== "string") return null;
    const reading = readShockShelf(text, file, units === "metric" ? "metric" : "inch-pound");
    return reading.ok ? reading.shelf : null;
  } catch {
    return null;
  }
}

/** As it was brought; null takes it away. */
export function keepShelf(
  shelf: { readonly file: string; readonly text: string; readonly units: string } | null,
): void {
  try {
    if (shelf) localStorage.setItem(KEY, JSON.stringify(shelf));
    else localStorage.removeItem(KEY);
  } catch {
    // A browser that keeps nothing still works.
  }
}
