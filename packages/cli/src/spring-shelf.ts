import { readSpringShelf as read, type ShelfSpring, type UnitSystem } from "@armwright/engine";
import type { Io } from "./io.ts";
import { Refusal } from "./refusal.ts";

/** The springs of a shelf file, JSON or CSV (in the car's units). Refuses with the place of the first fault. */
export function readSpringShelf(path: string, units: UnitSystem, io: Io): readonly ShelfSpring[] {
  const reading = read(io.read(path), path, units);
  if (!reading.ok) throw new Refusal(reading.words);
  return reading.shelf.springs;
}
