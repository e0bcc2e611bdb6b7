import type { Car, Linkage } from "../car/car.ts";
import type { Corner } from "../cycle/corner.ts";
import type { TravelReport } from "../limits/travel-report.ts";
import { kindOf } from "../linkage/kinds.ts";
import { allCaseForces, type CaseForces, caseGround } from "../loads/case-forces.ts";
import { whenAsked } from "../study/when-asked.ts";
import type { ArmFrame } from "./arm-frame.ts";
import { armFrame, armFrames, armTube } from "./arm-frames.ts";
import { type ArmProposal, armWays } from "./arm-proposals.ts";
import { armDiameter, carWithArm } from "./changed-arm.ts";
import { type ArmCheck, checkArm, weakest } from "./check-arms.ts";
import { checkLinks, type PartMass } from "./check-links.ts";
import { type BoltedPlace, checkPlace } from "./check-places.ts";
import { checkShaft } from "./check-shaft.ts";
import { byWeakness, type PartCheck } from "./part-check.ts";
import { type PartForces, partForces } from "./part-forces.ts";
import { MOUNT_PLACES } from "./places.ts";
import { nextSizes, type TubeSize } from "./stock-tubes.ts";
import { type WheelGive, wheelGive } from "./wheel-give.ts";

/** Whether the parts hold in the load cases, weakest first, with what rests on what. */
export interface StrengthStudy {
  readonly cases: readonly CaseForces[];
  /** Cases in which the parts' forces are known. */
  readonly forces: readonly PartForces[];
  /** Weakest first; what no case loads last. */
  readonly checks: readonly PartCheck[];
  readonly arms: readonly ArmCheck[];
  /** What each case turns the wheel by because the parts give. */
  readonly give: readonly WheelGive[];
  /** kg of one, left side. */
  readonly masses: readonly PartMass[];
  /** For each arm, its tubes one size up or down. */
  readonly alternatives: readonly TubeAlternative[];
  /** For each arm that does not hold, what would make it hold, lightest first. Found when asked for: it takes a while. */
  readonly proposals: readonly ArmProposal[];
  /** Of each way that was tried and does not make it hold, how far it comes; found with the proposals. */
  readonly tried: readonly ArmProposal[];
  /** What could not be judged because the document does not give it. */
  readonly notEntered: readonly string[];
}

/** An arm with its tubes of another size: what its weakest place then has, and what it weighs. */
export interface TubeAlternative {
  readonly arm: ArmFrame["arm"];
  readonly size: TubeSize;
  readonly isPresent: boolean;
  readonly factor: number | null;
  readonly mass: number;
}

/** What strength needs of a study. Null where the car's weight on the wheel is not given: there is then no load. */
export function studyStrength(made: {
  readonly car: Car;
  readonly corner: Corner;
  readonly travel: TravelReport;
}): StrengthStudy | null {
  const { car, corner } = made;
  const ground = caseGround(made);
  if (!ground) return null;
  const cases = allCaseForces(ground);
  const toBearing = car.strength?.stub?.toBearing ?? 0;
  const forces = cases.flatMap((each) => partForces(corner, each, toBearing) ?? []);
  const arms = armFrames(car).map((frame) => checkArm(frame, forces));
  const links = checkLinks(car, forces);
  const entry = car.strength;
  const places = entry ? boltedPlaces(corner).flatMap((place) => checkPlace(entry, place, forces)) : [];
  const checks = [
    ...arms.flatMap((arm) => arm.checks),
    ...links.checks,
    ...places,
    ...(entry ? checkShaft(entry, forces) : []),
  ].sort(byWeakness);
  const alternatives = whenAsked(() => arms.flatMap((arm) => alternativesOf(car, arm, forces)));
  const give = whenAsked(() => wheelGive(corner, arms, forces));
  const ways = whenAsked(() => arms.map((arm) => armWays(car, arm, forces)));
  return {
    cases,
    forces,
    checks,
    arms,
    get give() {
      return give();
    },
    masses: [
      ...arms.map(({ frame, mass }) => ({ part: frame.arm, label: frame.arm.replace("-", " "), mass })),
      ...links.masses,
    ],
    get alternatives() {
      return alternatives();
    },
    get proposals() {
      return ways().flatMap((arm) => arm.proposals);
    },
    get tried() {
      return ways().flatMap((arm) => arm.tried);
    },
    notEntered: notEntered(car),
  };
}

/** Where bolts go through: pivots, and the mounts that the car has. */
function boltedPlaces({ car, pivots }: Corner): readonly BoltedPlace[] {
  const radius = (pivot: string): number => car.rodEnds.find((each) => each.pivot === pivot)?.headRadius ?? 0;
  const has = (place: string): boolean =>
    (place.startsWith("shock.") && car.shock !== undefined) || (place.startsWith("strap.") && car.strap !== undefined);
  return [
    ...pivots.map(({ id, label }) => ({ place: id, label, headRadius: radius(id), isPivot: true })),
    ...MOUNT_PLACES.filter(has).map((place) => ({ place, label: place, headRadius: 0, isPivot: false })),
  ];
}

/** The arm's own tubes at the sizes next to theirs, all changed together. */
function alternativesOf(
  car: Car,
  { frame, checks, mass }: ArmCheck,
  forces: readonly PartForces[],
): readonly TubeAlternative[] {
  const { arm, isAssumed } = frame;
  if (!isAssumed) return [];
  const present = { diameter: armDiameter(car, arm), wall: armTube(car, arm).wall };
  const others = nextSizes(present, car.units).map((size): TubeAlternative => {
    const checked = checkArm(armFrame(carWithArm(car, arm, { main: size }), arm), forces);
    return { arm, size, isPresent: false, factor: weakest(checked.checks)?.factor ?? null, mass: checked.mass };
  });
  const now: TubeAlternative = {
    arm,
    size: present,
    isPresent: true,
    factor: weakest(checks)?.factor ?? null,
    mass,
  };
  return [now, ...others].sort((a, b) => a.mass - b.mass);
}

/** Parts that have no numbers in the document, in words. */
function notEntered({ strength, linkage, driveshaft }: Car): readonly string[] {
  const missing: string[] = [];
  const named = (items: Readonly<Record<string, unknown>> | undefined): boolean => Object.keys(items ?? {}).length > 0;
  const links = kindOf<Linkage>(linkage).members(linkage);
  if (!strength) missing.push(`tube walls and steel of ${links.length} tubes`);
  if (!Object.values(strength?.rodEnds ?? {}).some(({ rating }) => rating)) missing.push("ratings of the rod ends");
  if (!named(strength?.bolts)) missing.push("bolts");
  if (!named(strength?.tabs)) missing.push("tabs");
  if (!named(strength?.welds)) missing.push("welds of the tabs");
  if (driveshaft && !strength?.shaft) missing.push("the half shaft");
  if (!strength?.stub) missing.push("the stub axle");
  return missing;
}
