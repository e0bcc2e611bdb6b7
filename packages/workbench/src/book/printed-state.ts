import { type CarDocument, fingerprintOf, readCarDocument } from "@armwright/engine/document";
import { differences } from "../files/differences.ts";
import { placeName } from "../form/schema-fields.ts";
import { hasServer, historyOf, versionText } from "../store/connection.ts";
import { type Printed, printedText } from "./book-calls.ts";

/** Letters and digits of a fingerprint as they are typed off a sheet: `7307 a384-9e02`. */
export const tidyFingerprint = (typed: string): string =>
  (typed.toUpperCase().match(/[0-9A-F]/g) ?? []).join("").replace(/(.{4})(?=.)/g, "$1-");

/** How a sheet with that fingerprint stands to the car on the bench. */
export type SheetState =
  | { readonly is: "current" }
  | {
      readonly is: "out of date";
      /** When the car stopped being so, ISO 8601; null where only the paper tells of it. */
      readonly since: string | null;
      readonly changed: readonly string[];
    }
  | { readonly is: "unknown" }
  | { readonly is: "out of reach" };

/** Looks for the state of the car that a sheet was made from: the present one, one of its history, or of a book that was printed. */
export async function sheetState(name: string | null, document: CarDocument, fingerprint: string): Promise<SheetState> {
  if (fingerprintOf(document) === fingerprint) return { is: "current" };
  if (name === null) return { is: "unknown" };
  for (const version of await historyOf(name)) {
    const reading = readCarDocument(await versionText(name, version.id));
    if (!reading.ok || fingerprintOf(reading.document) !== fingerprint) continue;
    return { is: "out of date", since: version.at, changed: changedSince(reading.document, document) };
  }
  const printed = hasServer() ? await printedText(name, fingerprint) : undefined;
  const reading = printed === undefined ? undefined : readCarDocument(printed);
  if (!reading?.ok || fingerprintOf(reading.document) !== fingerprint) return { is: "unknown" };
  return { is: "out of date", since: null, changed: changedSince(reading.document, document) };
}

const changedSince = (before: CarDocument, now: CarDocument): readonly string[] =>
  differences(before, now).map(({ path }) => placeName(path, now));

/** Printed books of one state of the car: they hold or fall together. */
export interface PrintedState {
  readonly fingerprint: string;
  /** Days on which paper was made of it, the newest first. */
  readonly days: readonly string[];
  readonly holds: boolean;
}

/** Every book that was printed of the car, by what it was made from, the newest first; each holds or is out of date. */
export function printedStates(printed: readonly Printed[], present: string): readonly PrintedState[] {
  const states = new Map<string, string[]>();
  for (const { fingerprint, day } of printed) {
    const days = states.get(fingerprint) ?? [];
    if (!days.includes(day)) days.push(day);
    states.set(fingerprint, days);
  }
  return [...states].map(([fingerprint, days]) => ({ fingerprint, days, holds: fingerprint === present }));
}
