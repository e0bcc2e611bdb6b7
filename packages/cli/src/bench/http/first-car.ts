import type { Car } from "@armwright/engine";
import { readCarDocument } from "@armwright/engine/document";
import type { CarFolder } from "../folder/car-folder.ts";

/** A car as it was read: what a page draws before it has fetched what reads documents. */
export interface FirstCar {
  readonly name: string;
  readonly car: Car;
}

/**
 * The car that the page will open: the one it had last, else the demo car, else the first of the folder. Undefined where
 * there is none or it has faults: then the page reads it itself and says them.
 */
export async function firstCar(folder: CarFolder, last: string | undefined): Promise<FirstCar | undefined> {
  const name = last !== undefined && (await folder.car(last)) ? last : await usualCar(folder);
  const state = name === undefined ? undefined : await (await folder.car(name))?.read();
  const reading = state && readCarDocument(state.text);
  if (name === undefined || !reading?.ok) return undefined;
  // What was measured is solved already, and its certainty is asked for later.
  const { survey: _, ...car } = reading.car;
  return { name, car };
}

async function usualCar(folder: CarFolder): Promise<string | undefined> {
  const { cars } = await folder.list();
  return (cars.find(({ name }) => name === "saltbush") ?? cars[0])?.name;
}
