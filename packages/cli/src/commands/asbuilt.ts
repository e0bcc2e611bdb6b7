import { explainAsBuilt, explainedField, fiveMinuteCheck, limitCertainty, uncertainInputs } from "@armwright/engine";
import { readCarValue, setField } from "@armwright/engine/document";
import { applyFile, writeApplied } from "../apply.ts";
import { readCar } from "../car-file.ts";
import { EXIT, type Io } from "../io.ts";
import type { Words } from "../parse-words.ts";
import { Refusal } from "../refusal.ts";
import { asBuiltLines } from "../report/as-built.ts";
import { pageFor } from "../text/page.ts";
import { plain } from "../text/plain.ts";

export function perform({ operands, values, flags }: Words, io: Io): number {
  const reading = readCar(operands[0]!, io);
  if (!reading) return EXIT.refused;
  const { car, document } = reading;
  const apply = applyFile({ operands, values }, io);
  const inputs = uncertainInputs(car);
  const found = explainAsBuilt(car, car.asBuilt ?? [], inputs);
  const check = fiveMinuteCheck(car, inputs);
  const limits = limitCertainty(car, inputs);
  if (flags.has("json")) {
    const explanations = found.explanations.map(({ cause, by, sd, test }) => ({
      ...(cause.kind === "point"
        ? { place: cause.input.place.path, axis: cause.input.axis }
        : { setting: cause.setting }),
      by,
      sd,
      test,
    }));
    const readings = found.readings.map(({ logged, predicted, predictedSd, readingSd, misfit }) => ({
      ...logged,
      predicted,
      predictedSd,
      readingSd,
      misfit,
    }));
    const chances = limits.map(({ direction, limit, left, sd, chance }) => ({
      direction,
      limit: limit.id,
      left,
      sd,
      chance,
    }));
    const { agrees, probability, sum, alike } = found;
    const five = check && {
      what: check.card.kind,
      travel: check.travel,
      reads: check.reads,
      plusMinus: check.plusMinus,
    };
    io.out(
      `${JSON.stringify({ units: "SI", agrees, probability, sum, readings, explanations, alike, limits: chances, check: five }, null, 2)}\n`,
    );
  } else io.out(`${asBuiltLines(car, found, check, limits, pageFor(io, car.units)).join("\n")}\n`);
  if (apply === undefined) return EXIT.sound;
  const best = found.explanations[0];
  if (found.agrees || !best) throw new Refusal("Plan and car agree: there is nothing to write.");
  if (Math.abs(best.test) < LEAST_TEST)
    throw new Refusal("No single cause explains the readings: nothing is written. Look for a reading that is wrong.");
  const { path, value } = explainedField(car, best);
  if (!readCarValue(setField(document, path, value)).ok)
    throw new Refusal(`As built, ${path} at ${value} makes no car that goes together.`);
  writeApplied(document, [{ path, value }], apply, io);
  io.err(`Wrote ${plain(apply)}: the car as built, ${path} at ${value}. The plan is as it was.\n`);
  return EXIT.sound;
}

/** Standard deviations that a cause has to be worth before a car is written with it. */
const LEAST_TEST = 2;
