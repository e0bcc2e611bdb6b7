import { type CarDocument, fingerprintOf, readCarDocument } from "@armwright/engine/document";
import { differences } from "../files/differences.ts";
import { placeName } from "../form/schema-fields.ts";
import { historyOf, versionText } from "../store/connection.ts";

/** Letters and digits of a fingerprint as they are typed off a sheet: `7307 a384-9e02`. */
export const tidyFingerprint = (typed: string): string =>
  (typed.toUpperCase().match(/[0-9A-F]/g) ?? []).join("").replace(/(.{4})(?=.)/g, "$1-");

/** How a sheet with that fingerprint stands to the car on the bench. */
export type SheetState =
  | { readonly is: "current" }
  | { readonly is: "out of date"; readonly since: string; readonly changed: readonly string[] }
  | { readonly is: "unknown" }
  | { readonly is: "out of reach" };

/** Looks for the state of the car that a sheet was made from: the present one, or one of its history. */
export async function sheetState(name: string | null, document: CarDocument, fingerprint: string): Promise<SheetState> {
  if (fingerprintOf(document) === fingerprint) return { is: "current" };
  if (name === null) return { is: "unknown" };
  for (const version of await historyOf(name)) {
    const reading = readCarDocument(await versionText(name, version.id));
    if (!reading.ok || fingerprintOf(reading.document) !== fingerprint) continue;
    const changed = differences(reading.document, document).map(({ path }) => placeName(path, document));
    return { is: "out of date", since: version.at, changed };
  }
  return { is: "unknown" };
}
