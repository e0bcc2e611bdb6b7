import {
  type AsBuiltStudy,
  type Explanation,
  explainAsBuilt,
  explainedOperations,
  fiveMinuteCheck,
  likelyCauses,
  limitCertainty,
  remedyFor,
  sayOff,
  uncertainInputs,
} from "@armwright/engine";
import { applyOperations, readCarValue } from "@armwright/engine/document";
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
  const remedy = found.readings.length > 0 ? remedyFor(car, found) : null;
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
    const { agrees, probability, sum, alike, settings } = found;
    const turns = remedy?.turns?.turns.map(({ adjuster, change, turns: exact, halfTurns }) => ({
      adjuster,
      change,
      turns: exact,
      halfTurns,
    }));
    const five = check && {
      what: check.card.kind,
      travel: check.travel,
      reads: check.reads,
      plusMinus: check.plusMinus,
    };
    io.out(
      `${JSON.stringify({ units: "SI", agrees, probability, sum, readings, explanations, alike, settings, turns: turns ?? [], stops: remedy?.stops ?? [], limits: chances, check: five }, null, 2)}\n`,
    );
  } else io.out(`${asBuiltLines({ car, inputs, found, check, limits, remedy }, pageFor(io, car.units)).join("\n")}\n`);
  if (apply === undefined) return EXIT.sound;
  if (found.agrees) throw new Refusal("Plan and car agree: there is nothing to write.");
  const cause = chosenCause(found, values.get("cause"));
  const operations = explainedOperations(car, cause);
  const off = sayOff(cause, car.units);
  if (!readCarValue(applyOperations(document, operations)).ok)
    throw new Refusal(`As built, ${off}: that makes no car that goes together.`);
  writeApplied(document, operations, apply, io);
  io.err(`Wrote ${plain(apply)}: the car as built, ${off}. The plan is as it was.\n`);
  return EXIT.sound;
}

/** The cause to write: the one that is chosen, or the likeliest where the readings tell it from every other. */
function chosenCause(found: AsBuiltStudy, typed: string | undefined): Explanation {
  const likely = likelyCauses(found);
  if (likely.length === 0)
    throw new Refusal("No single cause explains the readings: nothing is written. Look for a reading that is wrong.");
  if (typed === undefined) {
    if (likely.length === 1) return likely[0]!;
    throw new Refusal(
      `The readings cannot tell ${likely.length} causes apart: choose one of those numbered above with --cause 1 to ${likely.length}, or take one more reading.`,
    );
  }
  const chosen = /^\d+$/.test(typed) ? likely[Number(typed) - 1] : undefined;
  if (!chosen) throw new Refusal(`--cause: ${plain(typed)} is none of the causes told: write 1 to ${likely.length}.`);
  return chosen;
}
