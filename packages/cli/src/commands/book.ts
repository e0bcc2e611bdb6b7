import { study } from "@armwright/engine";
import { readCar } from "../car-file.ts";
import { EXIT, type Io } from "../io.ts";
import type { Words } from "../parse-words.ts";
import { Refusal } from "../refusal.ts";
import { plain } from "../text/plain.ts";

export async function perform(words: Words, io: Io): Promise<number> {
  const reading = readCar(words.operands[0]!, io);
  if (!reading) return EXIT.refused;
  const { car, document } = reading;
  const paper = words.values.get("paper") ?? (car.units === "metric" ? "a4" : "letter");
  if (paper !== "letter" && paper !== "a4")
    throw new Refusal(`--paper takes letter or a4, found ${JSON.stringify(paper)}.`);
  const { bookFiles, stemOf } = await import("@armwright/book");
  const made = study(car);
  const folder = words.values.get("out") ?? `${stemOf(made)}-book`;
  io.makeFolder(folder);
  const files = await bookFiles(made, document, { paper, date: new Date() }, (done, of, name) =>
    io.err(`${done} of ${of}  ${plain(name)}\n`),
  );
  for (const { name, bytes } of files) io.writeBytes(`${folder}/${name}`, bytes);
  const must = made.findings.filter(({ gravity }) => gravity === "must").length;
  io.out(`Wrote ${files.length} files into ${plain(folder)}.\n`);
  if (must > 0) io.out(`Mind: ${must} findings must be put right before anything is cut: npx armwright study.\n`);
  io.out("Print the true-size pages at 100 %, with no fitting to the page, and lay a rule on their rulers.\n");
  return EXIT.sound;
}
