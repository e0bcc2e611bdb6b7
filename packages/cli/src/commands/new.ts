import { dirname, join } from "node:path";
import { LINKAGE_KINDS, type LinkageKindName, type UnitSystem } from "@armwright/engine";
import {
  carJsonSchema,
  nearestWord,
  simplestDocument,
  startingDocument,
  writeCarDocument,
} from "@armwright/engine/document";
import { EXIT, type Io } from "../io.ts";
import type { Words } from "../parse-words.ts";
import { Refusal } from "../refusal.ts";
import { plain } from "../text/plain.ts";

const UNIT_SYSTEMS: readonly UnitSystem[] = ["inch-pound", "metric"];
/** Named by the document, beside which it lies. */
const SCHEMA_FILE = "car.schema.json";

export function perform({ values, flags }: Words, io: Io): number {
  const kind = oneOf<LinkageKindName>("kind", values.get("kind"), LINKAGE_KINDS);
  const units = oneOf<UnitSystem>("units", values.get("units") ?? "inch-pound", UNIT_SYSTEMS);
  const made = flags.has("simple") ? simplestDocument(kind, units) : startingDocument(kind, units);
  const name = plain(values.get("name") ?? made.name).trim();
  if (name === "") throw new Refusal("--name is empty: write a few words.");
  const text = writeCarDocument({ $schema: `./${SCHEMA_FILE}`, ...made, name });
  const file = values.get("out");
  if (file === undefined || file === "-") {
    io.out(text);
    return EXIT.sound;
  }
  if (io.exists(file) && !flags.has("force"))
    throw new Refusal(`${file} is there already: name another, or add --force.`);
  io.write(file, text);
  io.err(`Wrote ${plain(file)}.\n`);
  const schema = join(dirname(file), SCHEMA_FILE);
  if (!io.exists(schema)) {
    io.write(schema, `${JSON.stringify(carJsonSchema(), null, 2)}\n`);
    io.err(`Wrote ${plain(schema)}, by which an editor explains each field.\n`);
  }
  return EXIT.sound;
}

function oneOf<Word extends string>(option: string, typed: string | undefined, words: readonly Word[]): Word {
  const found = words.find((word) => word === typed);
  if (found) return found;
  if (typed === undefined) throw new Refusal(`new needs --${option}: one of ${words.join(", ")}.`);
  const near = nearestWord(typed, words);
  throw new Refusal(
    `--${option}: ${JSON.stringify(typed)} is not known: ${near ? `did you mean ${near}?` : `write one of ${words.join(", ")}.`}`,
  );
}
