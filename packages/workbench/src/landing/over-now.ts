import type { ForceArrow } from "@armwright/drawing";
import {
  lengthOf,
  placeOn,
  type Study,
  sayStrut,
  scale,
  subtract,
  type UnitSystem,
  type Vec3,
} from "@armwright/engine";
import type { ShowOptions } from "../scene/types.ts";
import type { Solved } from "../store/position.ts";
import { clampTravel } from "../store/travel.ts";
import { shownFigures } from "../words/three-figures.ts";
import { valueAt } from "./at-time.ts";
import type { Made } from "./landing-store.ts";

/** The wheel is where the history has it as long as it is no farther off, m. */
const SAME_PLACE = 1e-3;
/** Forces smaller than this are not drawn, N. */
const SEEN = 40;

/** Ground and forces of a landing at a time, as seen from the car. */
export interface LandingNow {
  /** Height of the ground under the tyre, vehicle axes, m. */
  readonly groundZ: number;
  readonly arrows: readonly ForceArrow[];
}

/** Null where the hand has taken the wheel elsewhere: nothing of that moment holds there. */
export function landingNow(
  { answer }: Made,
  time: number,
  study: Study,
  solved: Solved,
  units: UnitSystem,
): LandingNow | null {
  const { history } = answer.landing;
  const at = (values: Float64Array): number => valueAt(history, values, time);
  if (Math.abs(clampTravel(at(history.travel), study) - solved.travel) > SAME_PLACE) return null;
  const { position } = solved;
  const { wheel } = study.car;
  // The history's wheel height is nothing where the tyre just touches even ground.
  const groundZ = position.wheelCentre.z - wheel.freeRadius + at(answer.ground) - at(history.wheelHeight);
  const contact = { ...position.wheelCentre, z: Math.max(groundZ, position.wheelCentre.z - wheel.freeRadius) };
  const { shock, bumpStop, strap } = study.car;
  const between = (
    id: string,
    size: number,
    lower: { readonly point: Vec3; readonly on: Parameters<typeof placeOn>[2] } | undefined,
    upper: { readonly point: Vec3; readonly on: Parameters<typeof placeOn>[2] } | undefined,
    words: string,
    pushes: boolean,
  ): ForceArrow[] => {
    if (!lower || !upper) return [];
    const a = placeOn(position, lower.point, lower.on);
    const b = placeOn(position, upper.point, upper.on);
    const way = pushes ? subtract(a, b) : subtract(b, a);
    const long = lengthOf(way);
    if (long < 1e-6) return [];
    const force = scale(way, size / long);
    return [
      {
        id,
        at: a,
        force,
        label: `${words} ${shownFigures(Math.abs(size), "force", units)}`,
        end: pushes ? "tip" : "tail",
      },
    ];
  };
  const load = at(history.wheelLoad);
  const arrows: readonly ForceArrow[] = [
    {
      id: "wheel",
      at: contact,
      force: { x: 0, y: 0, z: load },
      label: `wheel ${shownFigures(load, "force", units)}`,
      end: "tip",
    },
    ...between("shock", at(history.shockForce), shock?.lower, shock?.upper, sayStrut("shock"), true),
    ...between("bump-stop", at(history.stopForce), bumpStop?.strikes, bumpStop?.base, sayStrut("bump-stop"), true),
    ...between("strap", at(history.strapForce), strap?.lower, strap?.upper, sayStrut("strap"), false),
  ];
  return {
    groundZ,
    arrows: arrows.filter(({ force }) => lengthOf(force) > SEEN),
  };
}

/** The same for the car in space. */
export function inSpaceAt(
  made: Made,
  time: number,
  study: Study,
  solved: Solved,
  units: UnitSystem,
): Pick<ShowOptions, "forces" | "groundZ"> {
  const now = landingNow(made, time, study, solved, units);
  return now ? { forces: now.arrows, groundZ: now.groundZ } : {};
}
