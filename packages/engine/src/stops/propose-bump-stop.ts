import type { Car, Mount } from "../car/car.ts";
import type { Corner } from "../cycle/corner.ts";
import { addScaled, scale, subtract, type Vec3 } from "../geometry/vec3.ts";
import type { TravelReport } from "../limits/travel-report.ts";
import { shockPlaceAt } from "../springs/wheel-spring.ts";
import { INCH } from "../units/convert.ts";
import type { StopsWish } from "./assumptions.ts";
import { lineMotionAt } from "./line-motion.ts";
import { type Operation, typedLength, typedMount } from "./operation.ts";
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

const STEP = INCH / 16;
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
  while (at > 0 && shaft(at) < wish.shaftAtBump) at -= STEP;
  if (at <= 0) return { refused: "no-room" };
  const made = car.bumpStop ? moved(corner, car.bumpStop, at) : fresh(corner, at, Math.min(wish.stopWorks, at / 2));
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
  const holes = holeSpacing === undefined ? null : Math.ceil(need / holeSpacing - 1e-6);
  const by = holes === null || holeSpacing === undefined ? need : holes * holeSpacing;
  return { base: { ...base, point: addScaled(base.point, toward, by) }, strikes, reach, solid, holes };
}

function fresh(corner: Corner, at: number, works: number): Made | NoProposal["refused"] {
  const strikes = placeOnArm(corner, 0.55, 0);
  if (!strikes) return "no-arm";
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
  // Up to the next mark of the tape: rather a hair too soon than too late.
  const solid = Math.ceil((left(reach) + SOLID_SHARE * reach) / STEP + 0.5) * STEP;
  return { base: { point: foot(reach), on: "chassis" }, strikes, reach, solid, holes: null };
}

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
