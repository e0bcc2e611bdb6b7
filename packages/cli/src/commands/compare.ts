import { compareStudies, study } from "@armwright/engine";
import { readCar } from "../car-file.ts";
import { EXIT, type Io } from "../io.ts";
import type { Words } from "../parse-words.ts";
import { compareReport } from "../report/compare.ts";
import { pageFor } from "../text/page.ts";

export function perform({ operands: [first, second] }: Words, io: Io): number {
  const a = readCar(first!, io);
  const b = readCar(second!, io);
  if (!a || !b) return EXIT.refused;
  const sides = [
    { name: first!, document: a.document, study: study(a.car) },
    { name: second!, document: b.document, study: study(b.car) },
  ] as const;
  const comparison = compareStudies(sides[0].study, sides[1].study);
  io.out(compareReport({ a: sides[0], b: sides[1], comparison }, pageFor(io, a.car.units)));
  return EXIT.sound;
}
