import type { Car } from "../car/car.ts";
import type { Corner } from "../cycle/corner.ts";
import { type Vec3, vec } from "../geometry/vec3.ts";
import type { TravelReport } from "../limits/travel-report.ts";
import { gasAt, gasSpringOf, SLOW } from "../springs/gas-force.ts";
import { shockPlaceAt, shockSpringOf, wheelSpringAt } from "../springs/wheel-spring.ts";
import { STANDARD_GRAVITY } from "../units/convert.ts";
import type { Balance } from "./corner-forces.ts";
import { balance, type HeldCorner } from "./equilibrium.ts";
import { type CasePlace, COMMON_LOADS, type LoadCase, type LoadsEntry } from "./load-case.ts";
import type { StrutName } from "./struts.ts";

/** What every case of a car stands on. */
export interface CaseGround {
  readonly corner: Corner;
  readonly loads: LoadsEntry;
  readonly stops: { readonly droop: number; readonly bump: number };
  /** Of one rear wheel on the scale, and of what is not sprung, N; the latter null where not given. */
  readonly staticLoad: number;
  readonly unsprungWeight: number | null;
}

/** What a case had to be told otherwise than it stands in the table. */
export type CaseNote =
  | { readonly code: "carrier-missing"; readonly part: StrutName; readonly instead: StrutName }
  | { readonly code: "springs-not-given" }
  | { readonly code: "no-unsprung-weight" }
  | { readonly code: "limited-by-grip"; readonly grip: number }
  | { readonly code: "limited-by-engine"; readonly torque: number }
  | { readonly code: "engine-not-given" }
  | { readonly code: "no-driveshaft" }
  | { readonly code: "carrier-turned"; readonly part: StrutName };

export interface CaseForces {
  readonly loadCase: LoadCase;
  readonly held: HeldCorner;
  /** Every joint's force by name, or why there is none. */
  readonly balance: Balance;
  readonly notes: readonly CaseNote[];
}

/** Null where the car gives no corner weight: factors in g are then of nothing. */
export function caseGround(of: {
  readonly car: Car;
  readonly corner: Corner;
  readonly travel: TravelReport;
}): CaseGround | null {
  const { cornerMass, unsprungMass } = of.car.chassis;
  if (cornerMass === undefined) return null;
  return {
    corner: of.corner,
    loads: loadsOf(of.car),
    stops: { droop: of.travel.droop.stop.travel, bump: of.travel.bump.stop.travel },
    staticLoad: cornerMass * STANDARD_GRAVITY,
    unsprungWeight: unsprungMass === undefined ? null : unsprungMass * STANDARD_GRAVITY,
  };
}

/** The car's loads, or common practice where its document has none. */
export const loadsOf = (car: Car): LoadsEntry => car.loads ?? COMMON_LOADS;

/** Travel of a case's place, m. */
export function placeTravel(at: CasePlace, { droop, bump }: CaseGround["stops"]): number {
  if (typeof at === "number") return at;
  const places = { ride: 0, "half-bump": bump / 2, "full-bump": bump, "half-droop": droop / 2, "full-droop": droop };
  return places[at];
}

/** Forces of a case at its own place, or at another travel (m). */
export function caseForces(ground: CaseGround, loadCase: LoadCase, travel?: number): CaseForces {
  const notes: CaseNote[] = [];
  const held = heldCorner(ground, loadCase, travel ?? placeTravel(loadCase.at, ground.stops), notes);
  const found = balance(ground.corner, held);
  if (found.ok && found.forces.struts.some(({ canBe }) => !canBe)) {
    notes.push({ code: "carrier-turned", part: held.carrier });
  }
  return { loadCase, held, balance: found, notes };
}

/** Every case of the car's table. */
export const allCaseForces = (ground: CaseGround): readonly CaseForces[] =>
  ground.loads.cases.map((loadCase) => caseForces(ground, loadCase));

function heldCorner(ground: CaseGround, loadCase: LoadCase, travel: number, notes: CaseNote[]): HeldCorner {
  const { car } = ground.corner;
  const hasCarrier = { shock: car.shock, "bump-stop": car.bumpStop, strap: car.strap }[loadCase.carrier] !== undefined;
  // Where there is no shock either, nothing holds instead: the balance then says what is missing.
  const carrier = hasCarrier || !car.shock ? loadCase.carrier : "shock";
  if (carrier !== loadCase.carrier) notes.push({ code: "carrier-missing", part: loadCase.carrier, instead: carrier });
  const load = { ...wheelForces(ground, loadCase, notes), turning: { by: loadCase.turning } };
  if (loadCase.turning === "shaft" && !car.driveshaft) notes.push({ code: "no-driveshaft" });
  if (carrier === "shock" || !hasCarrier) return { travel, carrier, load };
  const shock = shockForceAt(ground, travel);
  if (shock === null) notes.push({ code: "springs-not-given" });
  return { travel, carrier, load, ...(shock === null ? {} : { known: { shock } }) };
}

/** Springs and gas at a travel, the gas fast about ride height; null where the document gives neither. */
function shockForceAt({ corner }: CaseGround, travel: number): number | null {
  const { shock } = corner.car;
  const place = shockPlaceAt(corner, travel);
  const ride = shockPlaceAt(corner, 0);
  if (!shock || !place || !ride) return null;
  const spring = shockSpringOf(shock);
  if (spring) return wheelSpringAt(spring, place, { pace: "fast", restedAt: ride.shockLength }).shockForce;
  return shock.gas ? gasAt(gasSpringOf(shock.gas), shock.longest - place.shockLength, SLOW).force : null;
}

function wheelForces(
  ground: CaseGround,
  loadCase: LoadCase,
  notes: CaseNote[],
): { readonly contact: Vec3; readonly centre: Vec3 } {
  const { staticLoad, unsprungWeight } = ground;
  if (loadCase.of === "unsprung" && unsprungWeight === null) notes.push({ code: "no-unsprung-weight" });
  // Not known, it is taken as a fifth of the corner: common practice for a buggy's rear corner.
  const g = loadCase.of === "corner" ? staticLoad : (unsprungWeight ?? staticLoad / 5);
  const up = vec(0, 0, loadCase.vertical * g);
  const level = vec(forwardForce(ground, loadCase, g, notes), -loadCase.inward * g, 0);
  if (loadCase.of === "unsprung") return { contact: vec(0, 0, 0), centre: vec(level.x, level.y, up.z) };
  if (loadCase.acts === "contact") return { contact: vec(level.x, level.y, up.z), centre: vec(0, 0, 0) };
  return { contact: up, centre: level };
}

/** F = factor × g, no more than grip × the wheel's load, nor than the torque at the wheel ÷ the loaded radius. */
function forwardForce({ corner, loads }: CaseGround, loadCase: LoadCase, g: number, notes: CaseNote[]): number {
  const wished = loadCase.forward * g;
  if (!loadCase.isLimited) return wished;
  let most = Math.abs(wished);
  const byGrip = loads.grip * Math.max(0, loadCase.vertical * g);
  let by: CaseNote | null = null;
  if (byGrip < most) {
    most = byGrip;
    by = { code: "limited-by-grip", grip: loads.grip };
  }
  if (loadCase.turning === "shaft") {
    const torque = wheelTorque(loads);
    if (torque === null) notes.push({ code: "engine-not-given" });
    else if (torque / corner.car.wheel.loadedRadius < most) {
      most = torque / corner.car.wheel.loadedRadius;
      by = { code: "limited-by-engine", torque };
    }
  }
  if (by) notes.push(by);
  return Math.sign(wished) * most;
}

/** Most torque at one wheel, N·m: engine × gearing × the wheel's share, without losses; null where not given. */
export function wheelTorque({ engineTorque, gearing, wheelShare }: LoadsEntry): number | null {
  return engineTorque === undefined || gearing === undefined ? null : engineTorque * gearing * wheelShare;
}
