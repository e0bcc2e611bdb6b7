import type { ForceArrow } from "@armwright/drawing";
import {
  type CaseForces,
  type CaseGround,
  type CornerForces,
  caseForces,
  caseGround,
  type JointForce,
  type LoadCase,
  lengthOf,
  type Study,
  sayStrut,
  type UnitSystem,
  type Vec3,
} from "@armwright/engine";
import { solvedAt } from "../store/position.ts";
import { shownFigures } from "../words/three-figures.ts";

/** A load case at a travel: its balance, and its forces as arrows. */
export interface ForcesNow {
  readonly ground: CaseGround;
  readonly loadCase: LoadCase;
  readonly found: CaseForces;
  readonly arrows: readonly ForceArrow[];
}

let last: { readonly key: readonly unknown[]; readonly now: ForcesNow | null } | undefined;

/** Found once however many parts of the page ask for it. Null where no weight on the wheel is given. */
export function forcesNow(study: Study, chosen: string | null, travel: number, units: UnitSystem): ForcesNow | null {
  const key = [study, chosen, travel, units];
  if (last?.key.every((each, i) => each === key[i])) return last.now;
  const now = findForces(study, chosen, travel, units);
  last = { key, now };
  return now;
}

function findForces(study: Study, chosen: string | null, travel: number, units: UnitSystem): ForcesNow | null {
  const ground = caseGround(study);
  const loadCase = ground?.loads.cases.find(({ name }) => name === chosen) ?? ground?.loads.cases[0];
  if (!ground || !loadCase) return null;
  const found = caseForces(ground, loadCase, travel);
  const { balance } = found;
  const centre = solvedAt(study, travel)?.position.wheelCentre;
  const arrows = balance.ok && centre ? arrowsOf(balance.forces, found, centre, units) : [];
  return { ground, loadCase, found, arrows };
}

/** The letter that a joint is called by, in drawing and table. */
export const letterOf = (index: number): string => String.fromCharCode(65 + (index % 26));

/** Smaller ones are left out of the drawing, N. */
const SEEN = 20;

function arrowsOf(
  forces: CornerForces,
  { held }: CaseForces,
  wheelCentre: Vec3,
  units: UnitSystem,
): readonly ForceArrow[] {
  const { contact, centre } = held.load;
  const said = (newtons: number): string => shownFigures(newtons, "force", units);
  const loads: ForceArrow[] = [
    {
      id: "wheel",
      at: forces.action.contactPoint,
      force: contact,
      label: `wheel ${said(lengthOf(contact))}`,
      end: "tip",
    },
    { id: "hub", at: wheelCentre, force: centre, label: `hub ${said(lengthOf(centre))}`, end: "tip" },
  ];
  const joints = forces.joints.map(
    (joint, index): ForceArrow => ({
      id: joint.pivot,
      at: joint.point,
      force: joint.force,
      label: `${letterOf(index)} ${said(lengthOf(joint.force))}`,
      end: "tail",
    }),
  );
  const struts = forces.struts.map(
    ({ name, magnitude, onLower, lower }): ForceArrow => ({
      id: name,
      at: lower.point,
      force: onLower,
      label: `${sayStrut(name)} ${said(Math.abs(magnitude))}`,
      end: name === "strap" ? "tail" : "tip",
    }),
  );
  return [...loads, ...struts, ...joints].filter(({ force }) => lengthOf(force) > SEEN);
}

/** What a joint carries, N: one size, or two that statics leaves it between. */
export function boundsOf({ worst, undecided }: JointForce): readonly [number, number] {
  const most = lengthOf(worst);
  return [Math.sqrt(Math.max(0, most ** 2 - undecided ** 2)), most];
}
