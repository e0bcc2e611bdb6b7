import { type TurnsResult, turnsFor } from "../adjust/turns-for.ts";
import type { Car } from "../car/car.ts";
import type { Setting } from "../certainty/inputs.ts";
import { type Corner, makeCorner } from "../cycle/corner.ts";
import { reportTravel } from "../limits/travel-report.ts";
import { cardReadings, cardValue } from "./card-reading.ts";
import { type AsBuiltStudy, withCause } from "./explain.ts";
import type { CardKind } from "./logged-reading.ts";

/** What to turn and what to move so that the car comes to its plan's camber, toe and stops. */
export interface Remedy {
  /** The car as it stands, as far as the readings tell: the likeliest cause in it where plan and car do not agree. */
  readonly now: Car;
  /** Turns from there to the plan's camber and toe; null where nothing screws. */
  readonly turns: TurnsResult | null;
  /** Strap and bump stop: how much to change them for the travel to end where the plan ends it. */
  readonly stops: readonly StopRemedy[];
}

export interface StopRemedy {
  readonly part: "strap" | "bump-stop";
  /** Where the plan ends the travel and where the car does as it stands, m. */
  readonly wanted: number;
  readonly now: number;
  /** Strap: how much longer; bump stop: how much to pack it out, m; negative: shorter. */
  readonly change: number;
}

/** Less than this, m, is not worth a change: half of a sixteenth. */
const LEAST = 0.0254 / 32;

export function remedyFor(car: Car, found: AsBuiltStudy): Remedy {
  const likeliest = found.agrees ? undefined : found.explanations[0];
  const moved = likeliest?.cause.kind === "point" ? withCause(car, likeliest.cause, likeliest.by) : car;
  /** A setting that is farther off than turning explains is off by all that is read of it. */
  const offOf = (setting: Setting): number =>
    likeliest?.cause.kind === "setting" && likeliest.cause.setting === setting
      ? likeliest.by
      : found.settings[setting].by;
  const { camber, toe } = car.wheel;
  const now: Car = { ...moved, wheel: { ...moved.wheel, camber: camber + offOf("camber"), toe: toe + offOf("toe") } };
  const turns = turnsFor(now, { camber, toe });
  return { now, turns: turns.turns.length > 0 ? turns : null, stops: stopRemedies(car, moved) };
}

const PARTS = [
  { part: "strap", direction: "droop" },
  { part: "bump-stop", direction: "bump" },
] as const satisfies readonly { part: CardKind; direction: "bump" | "droop" }[];

function stopRemedies(plan: Car, now: Car): readonly StopRemedy[] {
  if (plan === now) return [];
  const [planned, built] = [makeCorner(plan), makeCorner(now)];
  const [before, after] = [reportTravel(planned, 0.02), reportTravel(built, 0.02)];
  return PARTS.flatMap(({ part, direction }): StopRemedy[] => {
    const { by, works, travel: wanted } = before[direction].stop;
    if (by !== part || !works) return [];
    const [there, here] = [lengthAt(planned, part, wanted), lengthAt(built, part, wanted)];
    if (there === null || here === null || Math.abs(here - there) < LEAST) return [];
    // What has to end the travel there has to be as long as the car makes it there.
    return [{ part, wanted, now: after[direction].stop.travel, change: here - there }];
  });
}

/** Between the strap's holes, or from the bump stop's base to where it lands, m. */
function lengthAt(corner: Corner, part: "strap" | "bump-stop", travel: number): number | null {
  const card = cardReadings(corner).find(({ kind }) => kind === part);
  return card ? cardValue(corner, card, travel) : null;
}
