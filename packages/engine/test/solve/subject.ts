import { readFileSync } from "node:fs";
import { type CarDocument, type FieldValue, readCarValue, setField } from "../../src/document/index.ts";
import { solveContext } from "../../src/solve/ask.ts";
import type { FieldOperation, SolveContext } from "../../src/solve/question.ts";

export const EXAMPLES = ["saltbush", "greasewood", "rabbitbrush", "catclaw", "juniper"] as const;

export const withOperations = (document: CarDocument, operations: readonly FieldOperation[]): CarDocument =>
  operations.reduce((made, { path, value }) => setField(made, path, value), document);

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
  const carWith = (operations: readonly FieldOperation[]) => {
    const after = readCarValue(withOperations(document, operations));
    return after.ok ? after.car : null;
  };
  return { ...solveContext({ car, ownRight: Object.keys(document.right ?? {}), carWith }), document };
}
