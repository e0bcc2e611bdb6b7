import {
  bandOf,
  chooseSprings,
  type SpringNeed,
  springNeed,
  springOperations,
  study,
  studySprings,
  USE_BANDS,
  USUAL_CROSSOVER_PAST,
  type Use,
  withTrialSpring,
} from "@armwright/engine";
import { applyFile, writeApplied } from "../apply.ts";
import { readCar } from "../car-file.ts";
import { EXIT, type Io } from "../io.ts";
import { springsJson } from "../json/springs-json.ts";
import type { Words } from "../parse-words.ts";
import { Refusal } from "../refusal.ts";
import { choiceLines } from "../report/spring-choice.ts";
import { heatLines } from "../report/spring-heat.ts";
import { springLines } from "../report/springs.ts";
import { readSpringShelf } from "../spring-shelf.ts";
import { pageFor, section } from "../text/page.ts";
import { plain } from "../text/plain.ts";
import { hang } from "../text/wrap.ts";
import { bandFrom, lengthFrom, numberFrom, roadFrom } from "./spring-words.ts";

export function perform({ operands, values, flags }: Words, io: Io): number {
  const wantedUse = useFrom(values.get("use"));
  const road = roadFrom(values);
  const shelfFile = values.get("shelf");
  if (shelfFile !== undefined && shelfFile === "-" && operands[0] === "-") {
    throw new Refusal("CAR and --shelf cannot both come from standard input.");
  }
  const apply = applyFile({ operands, values }, io);
  const reading = readCar(operands[0]!, io);
  if (!reading) return EXIT.refused;
  const shelf = shelfFile === undefined ? null : readSpringShelf(shelfFile, reading.car.units, io);
  const hasSprings = reading.car.shock?.springs !== undefined;
  const car = shelf ? withTrialSpring(reading.car, shelf[0]!) : reading.car;
  if (!shelf) refuseWithoutShelf(values);
  const need = springNeed(car);
  if (need) throw new Refusal(NEEDS[need]);
  const pace = car.units === "metric" ? 1 / 3.6 : 0.44704;
  const speed = (numberFrom(values, "speed", 1, 200) ?? 15 / pace) * pace;
  const use = wantedUse ?? car.targets.use;
  const made = study(use ? { ...car, targets: { ...car.targets, use } } : car);
  const springs = studySprings(made);
  if (!springs) {
    throw new Refusal(
      "The springs cannot be studied: look at the weights (the scale's has to be the greater) and at the shock.",
    );
  }
  const band = bandFrom(values) ?? bandOf(use);
  const rideTravel = lengthFrom(values, "ride", car.units) ?? 0;
  const crossoverPast = lengthFrom(values, "crossover", car.units, "positive") ?? USUAL_CROSSOVER_PAST;
  if (rideTravel <= springs.stops.droop || rideTravel >= springs.stops.bump)
    throw new Refusal("--ride: the car is to sit between its stops: higher than drawn is negative.");
  const choices =
    shelf &&
    chooseSprings(made.corner, springs.shockSpring, shelf, {
      sprungMass: springs.sprungMass,
      ...(car.wheel.tyreRate !== undefined && { tyreRate: car.wheel.tyreRate }),
      stops: springs.stops,
      rideTravel,
      band,
      crossoverPast,
      collarPitch: springs.springs.collarPitch,
    });
  const finish = (): number => {
    if (apply === undefined) return EXIT.sound;
    const best = choices?.fitting[0];
    if (!best) throw new Refusal("No set of this shelf fits, so nothing is written: see above.");
    writeApplied(reading.document, springOperations(best.springs, car.units), apply, io);
    io.err(`Wrote ${plain(apply)} with the first set.\n`);
    return EXIT.sound;
  };
  if (flags.has("json")) {
    io.out(springsJson(made, springs, choices, car.units));
    return finish();
  }
  const page = pageFor(io, car.units);
  const heat = heatLines(car, road, speed, page);
  const lines = [
    ...hang("", car.name, page.width).map(page.bold),
    ...(hasSprings ? springLines(made, springs, page) : ["No springs on it yet: what the shelf has for it."]),
    ...(choices
      ? section(page, "From the shelf", choiceLines(choices, springs, { band, rideTravel, crossoverPast }, page))
      : []),
    ...section(page, "Heat on a rough road", heat),
  ];
  io.out(`${lines.join("\n")}\n`);
  return finish();
}

const NEEDS: Record<SpringNeed, string> = {
  shock: "The document has no shock: springs stand on one. Add the section shock.",
  springs:
    'The document has no springs: add "springs" to its shock, with a main spring\'s rate and free length to begin with.',
  "corner-weight": "weights.corner is missing: what one rear wheel carries on the scale, people in, tank half full.",
  "unsprung-weight": "weights.unsprung is missing: wheel, hub, brake, half of arm, shaft and shock.",
};

function useFrom(word: string | undefined): Use | undefined {
  if (word === undefined) return undefined;
  if (Object.hasOwn(USE_BANDS, word)) return word as Use;
  throw new Refusal(`--use: ${JSON.stringify(word)} is not known: write ${Object.keys(USE_BANDS).join(", ")}.`);
}

/** A wish is one for the choice from a shelf: without one it would say nothing. */
function refuseWithoutShelf(values: ReadonlyMap<string, string>): void {
  const asked = ["ride", "frequency", "crossover", "apply"].find((name) => values.has(name));
  if (asked) throw new Refusal(`--${asked} needs springs to choose from: add --shelf FILE.`);
}
