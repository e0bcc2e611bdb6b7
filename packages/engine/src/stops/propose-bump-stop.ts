import type { Car, Mount } from "../car/car.ts";
import type { Corner } from "../cycle/corner.ts";
import type { Operation } from "../document/operation.ts";
import { addScaled, length, scale, subtract, type Vec3 } from "../geometry/vec3.ts";
import type { TravelReport } from "../limits/travel-report.ts";
import { shockPlaceAt } from "../springs/wheel-spring.ts";
import { INCH } from "../units/convert.ts";
import { typedLength, typedMount } from "../units/typed.ts";
import type { StopsWish } from "./assumptions.ts";
import { lineMotionAt } from "./line-motion.ts";
import { placeOnArm } from "./place-on-arm.ts";
import type { NoProposal } from "./propose-strap.ts";

export interface BumpStopProposal {
  readonly base: Mount;
  readonly strikes: Mount;
  readonly reach: number;
  readonly solid: number;
  /** Travel at which it is solid, m. */
  readonly at: number;
  /** Holes of the collar, toward the arm positive; null where it has none. */
  readonly holes: number | null;
  /** What made the travel less than aimed at: a limit's label, or null. */
  readonly because: string | null;
  readonly operations: readonly Operation[];
}

/** A tape's marks, m. */
const STEP = INCH / 16;
/** A pad may be solid so many marks too soon: three coordinates and its height are each set to one. */
const MOST_EARLY = 2;
const NOTHING = 1e-6;
/** Near enough to square at first contact, rad: from memory. */
const SQUARE = (1.5 * Math.PI) / 180;
/** Of a tape in millimetres, m. */
const METRIC_STEP = 0.0005;
/** Of the bump travel, a stop works over no more; and how far out on the arm it lands. From memory, no source. */
const MOST_OF_BUMP = 0.5;
const OUT_ON_ARM = 0.55;
/** Share of its height at which a pad is solid: common practice, as the document's reader assumes it. */
const SOLID_SHARE = 0.4;

/**
 * A stop that is solid at the bump aimed at, or sooner where a hard limit or the shock's shaft asks for it. One that is
 * there keeps its pad and is moved along itself; where there is none, a pad lands square at first contact, half way out on
 * the arm, and works over the last of the travel.
 */
export function proposeBumpStop(
  { car, corner, travel }: { readonly car: Car; readonly corner: Corner; readonly travel: TravelReport },
  wish: StopsWish,
): BumpStopProposal | NoProposal {
  const wanted = car.targets.bump ?? travel.bump.stop.travel;
  const hard = travel.bump.first;
  let at = hard ? Math.min(wanted, hard.travel - wish.marginBump) : wanted;
  const shaft = (z: number): number => {
    const place = shockPlaceAt(corner, z);
    return car.shock && place ? place.shockLength - car.shock.shortest : Number.POSITIVE_INFINITY;
  };
  // Half a mark short reads as what is asked for.
  while (at > 0 && shaft(at) < wish.shaftAtBump - STEP / 2) at -= STEP;
  if (at <= 0) return { refused: "no-room" };
  const made = car.bumpStop
    ? moved(corner, car.bumpStop, at)
    : fresh(corner, at, Math.min(wish.stopWorks, at * MOST_OF_BUMP));
  if (made === "no-arm" || made === "no-room") return { refused: made };
  const because = hard && wanted - at > STEP ? hard.label : null;
  return { ...made, at, because, operations: operationsFor(car, made) };
}

type Made = Pick<BumpStopProposal, "base" | "strikes" | "reach" | "solid" | "holes">;

function moved(corner: Corner, stop: NonNullable<Car["bumpStop"]>, at: number): Made | NoProposal["refused"] {
  const { base, strikes, reach, solid, holeSpacing } = stop;
  const line = lineMotionAt(corner, base, strikes, at);
  if (!line || base.on !== "chassis") return "no-room";
  const toward = scale(subtract(line.to, line.from), 1 / line.length);
  const need = line.length - solid;
  // What a tape can set is never quite right: solid by a mark or two too soon is left as it is.
  const mark = corner.car.units === "metric" ? METRIC_STEP : STEP;
  if (holeSpacing === undefined && need <= NOTHING && need >= -MOST_EARLY * mark)
    return { base, strikes, reach, solid, holes: null };
  const holes = holeSpacing === undefined ? null : Math.ceil(need / holeSpacing - 1e-6);
  const by = holes === null || holeSpacing === undefined ? need : holes * holeSpacing;
  return { base: { ...base, point: addScaled(base.point, toward, by) }, strikes, reach, solid, holes };
}

function fresh(corner: Corner, at: number, works: number): Made | NoProposal["refused"] {
  const mark = corner.car.units === "metric" ? METRIC_STEP : STEP;
  const place = placeOnArm(corner, OUT_ON_ARM, 0);
  if (!place) return "no-arm";
  const strikes: Mount = { ...place, point: onMarks(place.point, mark) };
  const ground: Mount = { point: strikes.point, on: "chassis" };
  const touch = lineMotionAt(corner, ground, strikes, at - works);
  const full = lineMotionAt(corner, ground, strikes, at);
  if (!touch || !full) return "no-room";
  const foot = (reach: number): Vec3 => addScaled(touch.to, touch.path, reach);
  const left = (reach: number): number => {
    const { x, y, z } = subtract(full.to, foot(reach));
    return Math.hypot(x, y, z) - SOLID_SHARE * reach;
  };
  // What is squeezed hardly depends on the reach: two or three steps find it.
  let reach = works / 2;
  for (let step = 0; step < 30; step += 1) reach -= left(reach) / (1 - SOLID_SHARE);
  reach = Math.round(reach / STEP) * STEP;
  if (!(reach > 0)) return "no-room";
  const offPath = (point: Vec3): number =>
    lineMotionAt(corner, { point, on: "chassis" }, strikes, at - works)?.offPath ?? Math.PI;
  const least = Math.ceil((SOLID_SHARE * reach) / mark) * mark;
  const { point, solid } = onTape(foot(reach), full.to, least, mark, offPath);
  return { base: { point, on: "chassis" }, strikes, reach, solid, holes: null };
}

interface Foot {
  readonly point: Vec3;
  readonly solid: number;
}

/**
 * The tape's marks about a foot, and a mark for the solid height, so that the pad ends the travel never too late;
 * of those met squarely, the least too soon.
 */
function onTape(foot: Vec3, to: Vec3, least: number, mark: number, offPath: (point: Vec3) => number): Foot {
  let best: (Foot & { readonly early: number; readonly off: number }) | undefined;
  for (const solid of [least, least + mark, least + 2 * mark]) {
    for (const point of marksAbout(onMarks(foot, mark), mark)) {
      const early = solid - length(subtract(to, point));
      if (early < 0) continue;
      if (early > MOST_EARLY * mark) continue;
      const off = offPath(point);
      const better = !best || (off <= SQUARE && best.off <= SQUARE ? early < best.early : off < best.off);
      if (better) best = { point, solid, early, off };
    }
  }
  return best ?? { point: foot, solid: least };
}

/** Two marks to every side. */
function marksAbout({ x, y, z }: Vec3, mark: number): readonly Vec3[] {
  const by = [-2, -1, 0, 1, 2].map((marks) => marks * mark);
  return by.flatMap((i) => by.flatMap((j) => by.map((k) => ({ x: x + i, y: y + j, z: z + k }))));
}

const onMarks = ({ x, y, z }: Vec3, mark: number): Vec3 => ({
  x: Math.round(x / mark) * mark,
  y: Math.round(y / mark) * mark,
  z: Math.round(z / mark) * mark,
});

function operationsFor({ bumpStop, units }: Car, made: Made): readonly Operation[] {
  const stop: Operation = { path: "stops.bump", value: "bump-stop" };
  const base = typedMount(made.base, units);
  if (bumpStop) return [{ path: "bumpStop.base", value: base }, stop];
  const value = {
    base,
    strikes: typedMount(made.strikes, units),
    reach: typedLength(made.reach, units),
    solid: typedLength(made.solid, units),
  };
  return [{ path: "bumpStop", value }, stop];
}
