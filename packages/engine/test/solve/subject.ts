import { readFileSync } from "node:fs";
import {
  applyOperations,
  type CarDocument,
  type FieldValue,
  type Operation,
  readCarValue,
  setField,
} from "../../src/document/index.ts";
import { solveContext } from "../../src/solve/ask.ts";
import type { SolveContext } from "../../src/solve/question.ts";

export const EXAMPLES = ["saltbush", "greasewood", "rabbitbrush", "catclaw", "juniper"] as const;

/** An example car, with changes by path, made ready for questions. */
export function askable(
  name: (typeof EXAMPLES)[number],
  changes: Readonly<Record<string, FieldValue>> = {},
): SolveContext & { readonly document: CarDocument } {
  const text = readFileSync(new URL(`../../../../examples/${name}.car.json`, import.meta.url), "utf8");
  const changed = Object.entries(changes).reduce(
    (made, [path, value]) => setField(made, path, value),
    JSON.parse(text) as CarDocument,
  );
  const reading = readCarValue(changed);
  if (!reading.ok) throw new Error(`${name} does not read: ${reading.faults.map(({ code }) => code).join(", ")}`);
  const { car, document } = reading;
  const carWith = (operations: readonly Operation[]) => {
    const after = readCarValue(applyOperations(document, operations));
    return after.ok ? after.car : null;
  };
  return { ...solveContext({ car, ownRight: Object.keys(document.right ?? {}), carWith }), document };
}
