import { quote } from "../fault.ts";
import { nearestWord } from "../nearest-word.ts";
import type { Path } from "../path.ts";
import { type PlacedFault, placed } from "../structure.ts";
import { checkNames } from "./apart.ts";
import type { Look } from "./look.ts";

const POINTS: Path = ["survey", "points"];
const READINGS: Path = ["survey", "readings"];
const REFERENCES = ["from", "to", "point", "above", "left", "right"] as const;

/** Names tell points apart, readings name points that are there, and none is between a point and itself. */
export function checkSurvey(look: Look): readonly PlacedFault[] {
  const names = look.list(POINTS).flatMap((_, i) => look.text([...POINTS, i, "name"]) ?? []);
  const faults: PlacedFault[] = [...checkNames(look, POINTS)];
  for (const index of look.list(READINGS).keys()) {
    const seen = new Map<string, string>();
    for (const field of REFERENCES) {
      const at: Path = [...READINGS, index, field];
      const name = look.text(at);
      if (name === undefined) continue;
      faults.push(...knownPoint(at, name, names));
      const earlier = seen.get(name);
      if (earlier !== undefined) faults.push(placed(at, "coincide", { other: `${earlier} of the same reading` }));
      seen.set(name, field);
    }
  }
  return faults;
}

/** A fault where no point of the survey has the name. */
export function knownPoint(at: Path, name: string, names: readonly string[]): readonly PlacedFault[] {
  if (names.includes(name)) return [];
  const suggestion = nearestWord(name, names);
  const options = names.length > 0 ? names : ["the names of the survey's points, of which there are none"];
  return [placed(at, "unknown-word", { found: quote(name), options, ...(suggestion !== undefined && { suggestion }) })];
}
