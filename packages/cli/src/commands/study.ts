import { moveThrough, type Study, study } from "@armwright/engine";
import { readCar } from "../car-file.ts";
import { cycleCsv } from "../csv/cycle-csv.ts";
import { EXIT, type Io } from "../io.ts";
import { deliver } from "../output.ts";
import type { Words } from "../parse-words.ts";
import { Refusal } from "../refusal.ts";
import { studyReport } from "../report/study-report.ts";
import { pageFor } from "../text/page.ts";
import { chosenTravels } from "../travels.ts";

export async function perform(words: Words, io: Io): Promise<number> {
  const { flags, values, operands } = words;
  if (flags.has("json") && flags.has("csv")) throw new Refusal("--json and --csv are two forms: keep one.");
  if (flags.has("si") && !flags.has("json") && !flags.has("csv")) throw new Refusal("--si goes with --json or --csv.");
  const reading = readCar(operands[0]!, io);
  if (!reading) return EXIT.refused;
  const { car } = reading;
  const made = study(car);
  const choice = Object.fromEntries(
    ["at", "stations"].flatMap((name) => (values.has(name) ? [[name, values.get(name)!]] : [])),
  );
  /** Each wheel goes from its own stop to its own stop. */
  const moved = (side: Study) => {
    const { droop, bump } = side.travel;
    const travels = chosenTravels(choice, droop.stop.travel, bump.stop.travel, car.units);
    return { study: side, cycle: moveThrough(side.corner, travels) };
  };
  const { cycle } = moved(made);
  const right = car.right ? moved(study(car.right)) : null;
  const units = flags.has("si") ? "SI" : car.units;
  if (flags.has("csv")) {
    deliver(cycleCsv({ study: made, cycle }, right, units), words, io);
  } else if (flags.has("json")) {
    const { studyJson } = await import("../json/study-json.ts");
    deliver(studyJson({ study: made, cycle, right }, units), words, io);
  } else {
    const paper = values.has("out") ? { ...io, colour: { out: false, err: false } } : io;
    deliver(studyReport(made, cycle, right, pageFor(paper, car.units)), words, io);
  }
  return EXIT.sound;
}
