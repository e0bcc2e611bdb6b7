import type { UnitSystem } from "@armwright/engine";
import type { Io } from "../io.ts";

/** What a report is written on: how wide, how emphasis is made, and in whose units. */
export interface Page {
  readonly width: number;
  readonly bold: (text: string) => string;
  readonly red: (text: string) => string;
  readonly units: UnitSystem;
}

const WIDEST = 100;
const NARROWEST = 76;

export function pageFor(io: Io, units: UnitSystem): Page {
  const esc = "\u001b[";
  const mark = (code: number) => (text: string) =>
    io.colour.out && text !== "" ? `${esc}${code}m${text}${esc}0m` : text;
  return { width: Math.max(NARROWEST, Math.min(WIDEST, io.columns)), bold: mark(1), red: mark(31), units };
}

/** A heading over its lines, with a blank line before it; nothing where there are no lines. */
export const section = (page: Page, title: string, lines: readonly string[]): readonly string[] =>
  lines.length === 0 ? [] : ["", page.bold(title.toUpperCase()), ...lines];
