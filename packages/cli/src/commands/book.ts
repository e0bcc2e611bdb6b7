import { formatLength, INCH, parseLength, type Study, study, unitOf } from "@armwright/engine";
import { readCar } from "../car-file.ts";
import { EXIT, type Io } from "../io.ts";
import { localDay } from "../local-day.ts";
import type { Words } from "../parse-words.ts";
import { Refusal } from "../refusal.ts";
import { plain } from "../text/plain.ts";

/** Where the wheels of the solid assembly stand, m: between the stops, ride height where nothing is said. */
function travelOf(text: string | undefined, { car, travel }: Study): number {
  if (text === undefined) return 0;
  const parsed = parseLength(text.trim(), car.units);
  if (!parsed.ok)
    throw new Refusal(
      `--travel: ${JSON.stringify(text)} is not a travel: write ${parsed.suggestion ?? '"4 1/2" or "-3"'}.`,
    );
  const [droop, bump] = [travel.droop.stop.travel, travel.bump.stop.travel];
  if (parsed.metres < droop - HAIR || parsed.metres > bump + HAIR) {
    const mark = (metres: number): string => formatLength(metres, car.units);
    throw new Refusal(
      `--travel: ${JSON.stringify(text)} is past the stops: this wheel goes from ${mark(droop)} to ${mark(bump)} ${unitOf("length", car.units)}.`,
    );
  }
  return parsed.metres;
}

/** Half of a sixteenth: a stop is typed as it is read, m. */
const HAIR = INCH / 32;

export async function perform(words: Words, io: Io): Promise<number> {
  const reading = readCar(words.operands[0]!, io);
  if (!reading) return EXIT.refused;
  const { car, document } = reading;
  const paper = words.values.get("paper") ?? (car.units === "metric" ? "a4" : "letter");
  if (paper !== "letter" && paper !== "a4")
    throw new Refusal(`--paper takes letter or a4, found ${JSON.stringify(paper)}.`);
  const { bookFiles, stemOf } = await import("@armwright/book");
  const made = study(car);
  const travel = travelOf(words.values.get("travel"), made);
  const folder = words.values.get("out") ?? `${stemOf(made)}-book`;
  io.makeFolder(folder);
  const files = await bookFiles(
    made,
    document,
    { paper, date: new Date(`${localDay(new Date())}T00:00:00Z`), travel },
    (done, of, name) => io.err(`${done} of ${of}  ${plain(name)}\n`),
  );
  for (const { name, bytes } of files) io.writeBytes(`${folder}/${name}`, bytes);
  const must = made.findings.filter(({ gravity }) => gravity === "must").length;
  io.out(`Wrote ${files.length} files into ${plain(folder)}.\n`);
  if (must > 0) io.out(`Mind: ${must} findings must be put right before anything is cut: npx armwright study.\n`);
  io.out("Print the true-size pages at 100 %, with no fitting to the page, and lay a rule on their rulers.\n");
  return EXIT.sound;
}
