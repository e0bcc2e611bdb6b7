import { EXIT, type Io } from "../io.ts";
import { deliver } from "../output.ts";
import type { Words } from "../parse-words.ts";
import { Refusal } from "../refusal.ts";

export async function perform(words: Words, io: Io): Promise<number> {
  const { flags } = words;
  if (flags.has("study") && flags.has("reference"))
    throw new Refusal("--study and --reference are two papers: keep one.");
  deliver(await textFor(flags), words, io);
  return EXIT.sound;
}

async function textFor(flags: ReadonlySet<string>): Promise<string> {
  if (flags.has("study")) {
    const { studySchema } = await import("../json/study-json.ts");
    return pretty(studySchema());
  }
  const { carJsonSchema, carReference } = await import("@armwright/engine/document");
  return flags.has("reference") ? carReference() : pretty(carJsonSchema());
}

const pretty = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;
