import { type CaseForces, caseForces, caseGround, parseLength, study } from "@armwright/engine";
import { readCar } from "../car-file.ts";
import { EXIT, type Io } from "../io.ts";
import { loadsJson } from "../json/loads-json.ts";
import type { Words } from "../parse-words.ts";
import { Refusal } from "../refusal.ts";
import { loadsLines } from "../report/loads.ts";
import { caseLines } from "../report/loads-case.ts";
import { pageFor } from "../text/page.ts";
import { hang } from "../text/wrap.ts";

export function perform({ operands, values, flags }: Words, io: Io): number {
  const reading = readCar(operands[0]!, io);
  if (!reading) return EXIT.refused;
  const { car } = reading;
  const made = study(car);
  const ground = caseGround(made);
  if (!ground) {
    throw new Refusal(
      "weights.corner is missing: what one rear wheel carries on the scale, people in, tank half full. Load cases are so many times that.",
    );
  }
  const at = values.get("at");
  const travel = at === undefined ? undefined : travelFrom(at, car.units);
  const wanted = values.get("case");
  const cases = wanted === undefined ? ground.loads.cases : [caseNamed(wanted, ground.loads.cases)];
  const found: readonly CaseForces[] = cases.map((loadCase) => caseForces(ground, loadCase, travel));
  if (flags.has("json")) {
    io.out(loadsJson(ground, found, car.units));
    return EXIT.sound;
  }
  const page = pageFor(io, car.units);
  const lines = [
    ...hang("", car.name, page.width).map(page.bold),
    ...(wanted === undefined ? loadsLines(ground, found, page) : caseLines(ground, found[0]!, page)),
  ];
  io.out(`${lines.join("\n")}\n`);
  return EXIT.sound;
}

function travelFrom(text: string, units: Parameters<typeof parseLength>[1]): number {
  const parsed = parseLength(text.trim(), units);
  if (parsed.ok) return parsed.metres;
  throw new Refusal(`--at: ${JSON.stringify(text)} is not a travel: write ${parsed.suggestion ?? '"4 1/2" or "-3"'}.`);
}

/** A name, or the beginning of one where only one case begins so. */
function caseNamed<Case extends { readonly name: string }>(wanted: string, cases: readonly Case[]): Case {
  const same = (text: string) => text.trim().toLowerCase();
  const exact = cases.find(({ name }) => same(name) === same(wanted));
  const near = cases.filter(({ name }) => same(name).startsWith(same(wanted)));
  const found = exact ?? (near.length === 1 ? near[0] : undefined);
  if (found) return found;
  const names = cases.map(({ name }) => `"${name}"`).join(", ");
  throw new Refusal(`--case: ${JSON.stringify(wanted)} is not one of this car's cases: ${names}.`);
}
