import type { UnitSystem } from "@armwright/engine";

/** A shelf as it was brought: its text, and the units that it is read in where it names none. */
export interface BroughtShelf {
  readonly file: string;
  readonly text: string;
  readonly units: UnitSystem;
}

type Read<Shelf> = (
  text: string,
  file: string,
  units: UnitSystem,
) => { readonly ok: true; readonly shelf: Shelf } | { readonly ok: false };

/** Keeps a shelf of parts in this browser. */
export interface ShelfKeeper<Shelf> {
  /** Read anew: nothing in the storage is trusted. */
  readonly kept: () => Shelf | null;
  /** Null takes it away. */
  readonly keep: (shelf: BroughtShelf | null) => void;
}

export function shelfKeeper<Shelf>(key: string, read: Read<Shelf>): ShelfKeeper<Shelf> {
  return {
    kept: () => {
      try {
        const kept: unknown = JSON.parse(localStorage.getItem(key) ?? "null");
        if (typeof kept !== "object" || kept === null) return null;
        const { file, text, units } = kept as Readonly<Record<string, unknown>>;
        if (typeof file !== "string" || typeof text !== "string") return null;
        const reading = read(text, file, units === "metric" ? "metric" : "inch-pound");
        return reading.ok ? reading.shelf : null;
      } catch {
        return null;
      }
    },
    keep: (shelf) => {
      try {
        if (shelf) localStorage.setItem(key, JSON.stringify(shelf));
        else localStorage.removeItem(key);
      } catch {
        // A browser that keeps nothing still works.
      }
    },
  };
}
