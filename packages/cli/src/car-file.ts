import { type CarReading, readCarDocument, sayFault } from "@armwright/engine/document";
import type { Io } from "./io.ts";
import { plain } from "./text/plain.ts";
import { counted } from "./text/say.ts";

export type GoodReading = Extract<CarReading, { ok: true }>;

/** Reads a car document; its faults, each on its line, go to the errors, and null comes back. */
export function readCar(path: string, io: Io): GoodReading | null {
  const reading = readCarDocument(io.read(path));
  const name = path === "-" ? "standard input" : path;
  const faults = reading.ok ? reading.warnings : reading.faults;
  for (const fault of faults) {
    const place = fault.line === undefined ? name : `${name}:${fault.line}:${fault.column ?? 1}`;
    io.err(`${plain(`${place}: ${sayFault(fault)}`)}\n`);
  }
  if (reading.ok) return reading;
  io.err(`${counted(faults.length, "fault")} in the document: nothing was computed.\n`);
  return null;
}
