import { INCH, parseLength, stations, type UnitSystem } from "@armwright/engine";
import { Refusal } from "./refusal.ts";

/** Travels of the cycle: those asked for, or a row for every inch (25 mm) between the stops, as one would cycle the real car. */
export interface TravelChoice {
  readonly at?: string;
  readonly stations?: string;
}

export function chosenTravels(
  { at, stations: count }: TravelChoice,
  droop: number,
  bump: number,
  units: UnitSystem,
): ArrayLike<number> {
  if (at !== undefined && count !== undefined)
    throw new Refusal("--at and --stations are two ways to choose: keep one.");
  if (at !== undefined) return at.split(",").map((text) => travelFrom(text, units));
  if (count !== undefined) return stations(droop, bump, stationCount(count));
  return everyStep(droop, bump, units === "metric" ? 0.025 : INCH);
}

function travelFrom(text: string, units: UnitSystem): number {
  const parsed = parseLength(text.trim(), units);
  if (parsed.ok) return parsed.metres;
  const right = parsed.suggestion === undefined ? '"3, 0, -4 1/2"' : parsed.suggestion;
  throw new Refusal(`--at: ${JSON.stringify(text.trim())} is not a travel: write ${right}`);
}

const MOST_STATIONS = 1001;

function stationCount(text: string): number {
  const count = Number(text);
  if (/^\d+$/.test(text) && count >= 2 && count <= MOST_STATIONS) return count;
  throw new Refusal(`--stations: ${JSON.stringify(text)} is not a whole number from 2 to ${MOST_STATIONS}.`);
}

/** Both stops and the multiples of the step between them that are not all but at a stop. */
function everyStep(droop: number, bump: number, step: number): readonly number[] {
  const travels = [droop];
  for (let n = Math.ceil(droop / step); n * step < bump; n += 1) {
    const travel = n === 0 ? 0 : n * step;
    const isApart = Math.min(travel - droop, bump - travel) > 0.25 * step;
    if (isApart || (travel === 0 && droop < 0 && bump > 0)) travels.push(travel);
  }
  if (bump > droop) travels.push(bump);
  return travels;
}
