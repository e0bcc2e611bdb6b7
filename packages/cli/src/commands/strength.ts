import { type ArmProposal, formatNumber, type StrengthStudy, study, studyStrength } from "@armwright/engine";
import { applyFile, writeApplied } from "../apply.ts";
import { readCar } from "../car-file.ts";
import { EXIT, type Io } from "../io.ts";
import type { Words } from "../parse-words.ts";
import { Refusal } from "../refusal.ts";
import { strengthLines } from "../report/strength.ts";
import { WAYS, wayWords } from "../report/strength-help.ts";
import { pageFor } from "../text/page.ts";
import { plain } from "../text/plain.ts";

export function perform({ operands, values, flags }: Words, io: Io): number {
  const reading = readCar(operands[0]!, io);
  if (!reading) return EXIT.refused;
  const { car, document } = reading;
  const apply = applyFile({ operands, values }, io);
  const found = studyStrength(study(car));
  if (!found)
    throw new Refusal(
      "Factors in g need the weight of one rear wheel on the scale: enter weights.corner in the document.",
    );
  const chosen = apply === undefined ? [] : chosenFor(found, values.get("by"));
  if (flags.has("json")) {
    const { checks, alternatives, proposals, tried, give, masses, notEntered } = found;
    io.out(
      `${JSON.stringify({ units: "SI", checks, proposals, tried, alternatives, give, masses, notEntered }, null, 2)}\n`,
    );
  } else io.out(`${strengthLines(car, found, values.get("part"), pageFor(io, car.units)).join("\n")}\n`);
  if (apply !== undefined) {
    writeApplied(
      document,
      chosen.flatMap(({ operations }) => operations),
      apply,
      io,
    );
    const said = chosen.map((each) => wayWords(each, car.units)).join("; ");
    io.err(
      `Wrote ${plain(apply)}: ${said}. Check clearances and weigh it again: npx armwright study ${plain(apply)}.\n`,
    );
  }
  return EXIT.sound;
}

/** One proposal for each weak arm: the lightest, or the lightest of the way asked for. Throws Refusal. */
function chosenFor({ proposals, tried }: StrengthStudy, by: string | undefined): readonly ArmProposal[] {
  const way = WAYS.find((each) => each === by);
  if (by !== undefined && !way) throw new Refusal(`--by: ${JSON.stringify(by)} is none of ${WAYS.join(", ")}.`);
  if (proposals.length === 0)
    throw new Refusal(
      tried.length === 0
        ? "--apply: nothing to write: every arm whose frame is made from the car's points bears the cases."
        : `--apply: nothing to write: no way was found that makes the arm hold; tried: ${tried.map(farWords).join(", ")}.`,
    );
  const arms = [...new Set(proposals.map(({ arm }) => arm))];
  return arms.map((arm) => {
    const ways = proposals.filter((each) => each.arm === arm);
    const chosen = way ? ways.find(({ kind }) => kind === way) : ways[0];
    if (chosen) return chosen;
    const far = tried.find((each) => each.arm === arm && each.kind === way);
    throw new Refusal(
      `--by: no ${way} was found that makes the ${arm.replace("-", " ")} hold${far ? ` (best: ${farWords(far)})` : ""}; there is ${ways.map(({ kind }) => kind).join(", ")}.`,
    );
  });
}

const farWords = ({ kind, weakest: { factor } }: ArmProposal): string =>
  factor === null ? kind : `${kind} to factor ${formatNumber(factor, 2)}`;
