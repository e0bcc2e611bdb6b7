import { existsSync, readdirSync, readFileSync } from "node:fs";
import { LINKAGE_KINDS } from "@armwright/engine";
import {
  type CarDocument,
  type FieldValue,
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
