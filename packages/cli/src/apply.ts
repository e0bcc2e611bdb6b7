import {
  applyOperations,
  type CarDocument,
  type Operation,
  readCarValue,
  writeCarDocument,
} from "@armwright/engine/document";
import type { Io } from "./io.ts";
import type { Words } from "./parse-words.ts";
import { Refusal } from "./refusal.ts";

/** The file that --apply names, which may not be the car that is read; undefined where it is not given. Throws Refusal. */
export function applyFile({ operands, values }: Pick<Words, "operands" | "values">, io: Io): string | undefined {
  const file = values.get("apply");
  if (file === undefined) return undefined;
  const car = operands[0] ?? "-";
  if (file === car || io.isSame(file, car))
    throw new Refusal(`${file} is the car document itself: name another file for --apply.`);
  return file;
}

/** Writes the car with the edits made into a file. What was proposed has to read as a car: otherwise it is our fault. */
export function writeApplied(document: CarDocument, operations: readonly Operation[], file: string, io: Io): void {
  const changed = applyOperations(document, operations);
  if (!readCarValue(changed).ok) throw new Error("bug in armwright: what was proposed does not read as a car");
  io.write(file, writeCarDocument(changed));
}
