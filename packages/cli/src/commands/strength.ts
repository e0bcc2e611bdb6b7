import { study, studyStrength } from "@armwright/engine";
import { readCar } from "../car-file.ts";
import { EXIT, type Io } from "../io.ts";
import type { Words } from "../parse-words.ts";
import { Refusal } from "../refusal.ts";
import { strengthLines } from "../report/strength.ts";
import { pageFor } from "../text/page.ts";

export function perform({ operands, values, flags }: Words, io: Io): number {
  const reading = readCar(operands[0]!, io);
  if (!reading) return EXIT.refused;
  const { car } = reading;
  const found = studyStrength(study(car));
  if (!found)
    throw new Refusal(
      "Factors in g need the weight of one rear wheel on the scale: enter weights.corner in the document.",
    );
  if (flags.has("json")) {
    const { checks, alternatives, masses, notEntered } = found;
    io.out(`${JSON.stringify({ units: "SI", checks, alternatives, masses, notEntered }, null, 2)}\n`);
  } else io.out(`${strengthLines(car, found, values.get("part"), pageFor(io, car.units)).join("\n")}\n`);
  return EXIT.sound;
}
