import { readCarDocument, readSurvey, sayFault } from "@armwright/engine/document";
import { readCar } from "../car-file.ts";
import { EXIT, type Io } from "../io.ts";
import { surveyJson } from "../json/survey-json.ts";
import type { Words } from "../parse-words.ts";
import { Refusal } from "../refusal.ts";
import { surveyLines } from "../report/survey.ts";
import { pageFor } from "../text/page.ts";
import { plain } from "../text/plain.ts";
import { counted } from "../text/say.ts";

export function perform({ operands, flags }: Words, io: Io): number {
  const path = operands[0]!;
  const text = io.read(path);
  const made = readSurvey(text);
  if (!made) {
    // A survey that cannot be read is told with all else that is wrong.
    if (!readCar(path, { ...io, read: () => text })) return EXIT.refused;
    throw new Refusal(
      'The document has no survey: add "survey" with its points and readings; examples/brittlebush.car.json shows how.',
    );
  }
  const reading = readCarDocument(text);
  if (!reading.ok) {
    for (const fault of reading.faults) io.err(`${plain(sayFault(fault))}\n`);
    io.err(`${counted(reading.faults.length, "fault")} in the document: no car yet, here is the survey alone.\n`);
  }
  if (flags.has("json")) io.out(surveyJson(made, made.survey));
  else io.out(`${surveyLines(made, made.survey, flags.has("readings"), pageFor(io, made.units)).join("\n")}\n`);
  return EXIT.sound;
}
