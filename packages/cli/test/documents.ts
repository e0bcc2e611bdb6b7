import { existsSync, readdirSync, readFileSync } from "node:fs";
import { type Car, LINKAGE_KINDS, moveThrough, type Study, stations, study } from "@armwright/engine";
import {
  type CarDocument,
  type FieldValue,
  readCarDocument,
  setField,
  simplestDocument,
  startingDocument,
  writeCarDocument,
} from "@armwright/engine/document";

export interface Sample {
  readonly name: string;
  readonly text: string;
}

const SYSTEMS = ["inch-pound", "metric"] as const;

/** Starting and simplest document of each kind in both unit systems, and every car in examples/. */
export const SAMPLES: readonly Sample[] = [
  ...LINKAGE_KINDS.flatMap((kind) =>
    SYSTEMS.flatMap((system) => [
      { name: `${kind}, ${system}`, text: writeCarDocument(startingDocument(kind, system)) },
      { name: `${kind}, ${system}, simplest`, text: writeCarDocument(simplestDocument(kind, system)) },
    ]),
  ),
  ...examples(),
];

function examples(): readonly Sample[] {
  const folder = new URL("../../../examples/", import.meta.url);
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((file) => file.endsWith(".car.json"))
    .map((name) => ({ name, text: readFileSync(new URL(name, folder), "utf8") }));
}

export const hArm = (): CarDocument => startingDocument("h-arm", "inch-pound");

export const textWith = (document: CarDocument, changes: Readonly<Record<string, FieldValue>>): string =>
  writeCarDocument(Object.entries(changes).reduce((made, [path, value]) => setField(made, path, value), document));

/** An H-arm whose joints end the travel both ways before strap and bump stop do. */
export const unprotected = (): string =>
  textWith(hArm(), { "driveshaft.inner.angleLimit": 20, "driveshaft.outer.angleLimit": 20, "shock.longest": 24 });

/** An H-arm whose rod ends all have threads; the upper link is a turnbuckle. */
export const threaded = (): string => {
  const end = (hand: "left" | "right") => ({ thread: "3/4-16", hand });
  const arm = ["innerFront", "innerRear", "outerFront", "outerRear"];
  return textWith(hArm(), {
    rodEnds: {
      ...Object.fromEntries(arm.map((pivot) => [`lowerArm.${pivot}`, end("right")])),
      "upperLink.inner": end("left"),
      "upperLink.outer": end("right"),
    },
  });
};

const cars = new Map<string, Car>();
/** The car of a document that has to read well. */
export function carOf(text: string): Car {
  const known = cars.get(text);
  if (known) return known;
  const reading = readCarDocument(text);
  if (!reading.ok) throw new Error(`the sample does not read: ${reading.faults.map(({ code }) => code).join(", ")}`);
  cars.set(text, reading.car);
  return reading.car;
}

/** A wheel's study and a cycle of nine travels from stop to stop. */
export interface Moved {
  readonly study: Study;
  readonly cycle: ReturnType<typeof moveThrough>;
}

const studies = new Map<Car, Moved>();
/** Studied once, however many tests look at it. */
export function movedOf(car: Car): Moved {
  const known = studies.get(car);
  if (known) return known;
  const made = study(car);
  const { droop, bump } = made.travel;
  const moved = { study: made, cycle: moveThrough(made.corner, stations(droop.stop.travel, bump.stop.travel, 9)) };
  studies.set(car, moved);
  return moved;
}
