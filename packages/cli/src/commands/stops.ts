import {
  parseLength,
  proposeStops,
  type StopsWish,
  type Study,
  study,
  studyStops,
  type UnitSystem,
} from "@armwright/engine";
import { applyOperations, readCarValue } from "@armwright/engine/document";
import { applyFile, writeApplied } from "../apply.ts";
import { readCar } from "../car-file.ts";
import { EXIT, type Io } from "../io.ts";
import type { Words } from "../parse-words.ts";
import { Refusal } from "../refusal.ts";
import { stopsJson, stopsLines } from "../report/stops.ts";
import { pageFor } from "../text/page.ts";
import { plain } from "../text/plain.ts";

export function perform({ operands, values, flags }: Words, io: Io): number {
  const reading = readCar(operands[0]!, io);
  if (!reading) return EXIT.refused;
  const { car, document } = reading;
  const apply = applyFile({ operands, values }, io);
  const wish = wishFrom(values, flags, car.units);
  const made = study(car);
  const stops = studyStops(made, wish);
  const proposal = proposeStops(made, wish);
  const after = (): Study | null => {
    if (proposal.operations.length === 0) return null;
    const changed = readCarValue(applyOperations(document, proposal.operations));
    return changed.ok ? study(changed.car) : null;
  };
  if (flags.has("json")) io.out(stopsJson(stops, proposal));
  else io.out(`${stopsLines(made, stops, proposal, after(), pageFor(io, car.units)).join("\n")}\n`);
  if (apply === undefined) return EXIT.sound;
  if (proposal.operations.length === 0) throw new Refusal("Nothing can be proposed, so nothing is written: see above.");
  writeApplied(document, proposal.operations, apply, io);
  io.err(`Wrote ${plain(apply)} with these stops.\n`);
  return EXIT.sound;
}

function wishFrom(
  values: ReadonlyMap<string, string>,
  flags: ReadonlySet<string>,
  units: UnitSystem,
): Partial<StopsWish> {
  const length = (name: string): number | undefined => {
    const text = values.get(name);
    if (text === undefined) return undefined;
    const parsed = parseLength(text, units);
    if (parsed.ok && parsed.metres >= 0 && parsed.metres <= 10) return parsed.metres;
    throw new Refusal(
      `--${name}: ${JSON.stringify(text)} is not a length such as 12, none below zero, none over 30 ft.`,
    );
  };
  const drop = length("drop");
  const snatch = length("snatch");
  const margin = length("margin");
  return {
    ...(drop !== undefined && { dropHeight: drop }),
    // Said as the height that it would fall from: v = √(2gh).
    ...(snatch !== undefined && { snatchSpeed: Math.sqrt(2 * 9.80665 * snatch) }),
    ...(margin !== undefined && { marginDroop: margin, marginBump: margin }),
    ...(flags.has("no-damping") && { dampingBump: 0, dampingRebound: 0 }),
  };
}
