import type { Corner, LowerZone, UpperZone, Vec3 } from "@armwright/engine";
import { FIRST_WISHES, type Wishes } from "./mounts-store.ts";

const KEY = "armwright.mount-wishes";
/** Cars whose wishes are kept; those looked at longest ago are forgotten first. */
const MOST_CARS = 50;

type Fields = Readonly<Record<string, unknown>>;

/** What was asked of the finder for a car when it was last looked at; null where nothing is kept that still suits the car. */
export function keptWishes(madeFor: string, corner: Corner): Wishes | null {
  const kept = readKept().find(([name]) => name === madeFor)?.[1];
  if (!isFields(kept)) return null;
  const zones = zonesFrom(kept["zones"], corner);
  if (!zones) return null;
  const { chosen, step, travel, reserve, requirements } = kept;
  return {
    zones,
    chosen: Array.isArray(chosen) ? chosen.filter((name) => typeof name === "string") : FIRST_WISHES.chosen,
    step: isNumber(step) && step > 0 ? step : FIRST_WISHES.step,
    travel: isAlike(travel, { droop: -1, bump: 1 }) ? travel : null,
    reserve: isAlike(reserve, FIRST_WISHES.reserve) ? reserve : FIRST_WISHES.reserve,
    requirements: isAlike(requirements, LEAST_REQUIREMENTS) ? requirements : FIRST_WISHES.requirements,
  };
}

export function keepWishes(madeFor: string, wishes: Wishes): void {
  if (madeFor === "" || !wishes.zones) return;
  const { chosen, zones, travel, reserve, requirements, step } = wishes;
  const others = readKept().filter(([name]) => name !== madeFor);
  const all = [...others, [madeFor, { chosen, zones, travel, reserve, requirements, step }]].slice(-MOST_CARS);
  try {
    localStorage.setItem(KEY, JSON.stringify(all));
  } catch {
    // A browser that keeps nothing still works.
  }
}

/** Without what may be left out. */
const LEAST_REQUIREMENTS: Omit<Wishes["requirements"], "wrench" | "offSquareAtBump"> = FIRST_WISHES.requirements;

/** Nothing in the storage is trusted. */
function readKept(): readonly (readonly [string, unknown])[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? "[]");
    if (!Array.isArray(kept)) return [];
    return kept.filter((entry): entry is [string, unknown] => Array.isArray(entry) && typeof entry[0] === "string");
  } catch {
    return [];
  }
}

const isNumber = (value: unknown): value is number => typeof value === "number" && Number.isFinite(value);
const isFields = (value: unknown): value is Fields => typeof value === "object" && value !== null;

/** Has every field of the sample, each of its kind. */
const isAlike = <T>(value: unknown, sample: T): value is T =>
  isFields(sample)
    ? isFields(value) &&
      Object.entries(sample).every(([name, field]) => field === undefined || isAlike(value[name], field))
    : typeof sample === "number"
      ? isNumber(value)
      : typeof value === typeof sample;

const POINT: Vec3 = { x: 0, y: 0, z: 0 };
const BOX = { from: POINT, to: POINT };

function zonesFrom(value: unknown, corner: Corner): Wishes["zones"] {
  if (!isFields(value) || !Array.isArray(value["lower"])) return null;
  const upper = value["upper"];
  return isUpper(upper, corner) ? { upper, lower: value["lower"].filter((zone) => isLower(zone, corner)) } : null;
}

function isUpper(zone: unknown, { car }: Corner): zone is UpperZone {
  if (!isFields(zone)) return false;
  if (zone["kind"] === "box") return isAlike(zone, BOX);
  const isThere = car.keepOuts.some(({ name, shape }) => shape === "tube" && name === zone["keepOut"]);
  return zone["kind"] === "tube" && isThere && isAlike(zone["standoff"], POINT);
}

function isLower(zone: unknown, corner: Corner): zone is LowerZone {
  if (!isFields(zone)) return false;
  const { kind, on } = zone;
  if (kind === "box") return isAlike(zone, BOX) && (on === "spindle" || corner.arms.some(({ body }) => body === on));
  const isThere = corner.members.some(({ id }) => id === zone["member"]);
  return kind === "tube" && isThere && isAlike(zone, { standoff: 0, from: 0, to: 0 });
}
