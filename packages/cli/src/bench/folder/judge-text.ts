import {
  type CarDocument,
  type Fault,
  FORMAT_VERSION,
  migrate,
  readCarDocument,
  sayFault,
  writeCarDocument,
} from "@armwright/engine/document";
import type { Forms, Judgement, SaidFault } from "./judgement.ts";

const BREAKING: ReadonlySet<string> = new Set([
  "bad-json",
  "nested-too-deep",
  "duplicate-key",
  "not-a-car",
  "bad-version",
  "newer-version",
]);

export function judgeText(text: string): Judgement {
  const reading = readCarDocument(text);
  if (reading.ok) return { condition: "sound", faults: [], fields: reading.document };
  const faults = reading.faults.map(said);
  if (faults.some(({ code }) => BREAKING.has(code))) return { condition: "broken", faults };
  const value = JSON.parse(text.replace(/^\ufeff/, "")) as Readonly<Record<string, unknown>>;
  // Faulty, so not yet a car document in every field; edits only need it to be an object.
  const fields = migrate(value, Number(value["armwright"])).document as unknown as CarDocument;
  return { condition: "faulty", faults, fields };
}

/** The document's text in declared order; where the unit system itself is at fault, in the order it has. */
function textOf(fields: CarDocument): string {
  const known: readonly unknown[] = ["inch-pound", "metric"];
  if (fields.armwright === FORMAT_VERSION && known.includes(fields.units)) {
    try {
      return writeCarDocument(fields);
    } catch (error) {
      // A value of a wrong kind that the ordering does not expect: the order is lost, nothing else.
      if (!(error instanceof TypeError)) throw error;
    }
  }
  return `${JSON.stringify(fields, null, 2)}\n`;
}

/** How car documents are read and written. */
export const CAR_FORMS: Forms = { judge: judgeText, write: textOf };

const said = (fault: Fault): SaidFault => ({
  code: fault.code,
  path: fault.path,
  says: sayFault(fault),
  ...(fault.line === undefined ? {} : { line: fault.line }),
  ...(fault.column === undefined ? {} : { column: fault.column }),
});
