import type { CaseForces, CaseGround, Dimension, UnitSystem, Vec3 } from "@armwright/engine";
import { numberOut } from "../units-out.ts";

/** Version of the form below. */
const LOADS_FORM_VERSION = 1;

/** Every case with every force as the text of a JSON file, in the document's units. Vectors: forward, left, up. */
export function loadsJson(
  { staticLoad, loads, stops }: CaseGround,
  cases: readonly CaseForces[],
  units: UnitSystem,
): string {
  const out = (value: number, dimension: Dimension): number => numberOut(value, dimension, units);
  const vector = ({ x, y, z }: Vec3, dimension: Dimension) => ({
    x: out(x, dimension),
    y: out(y, dimension),
    z: out(z, dimension),
  });
  const whole = {
    armwrightLoads: LOADS_FORM_VERSION,
    units,
    cornerLoad: out(staticLoad, "force"),
    grip: loads.grip,
    stops: { droop: out(stops.droop, "length"), bump: out(stops.bump, "length") },
    cases: cases.map(({ loadCase, held, balance, notes }) => ({
      name: loadCase.name,
      from: loadCase.from,
      factors: { vertical: loadCase.vertical, inward: loadCase.inward, forward: loadCase.forward, of: loadCase.of },
      turning: loadCase.turning,
      travel: out(held.travel, "length"),
      heldBy: held.carrier,
      contact: vector(held.load.contact, "force"),
      centre: vector(held.load.centre, "force"),
      notes: notes.map(({ code }) => code),
      noBalance: balance.ok ? null : balance.reason,
      forces: balance.ok
        ? {
            joints: balance.forces.joints.map((joint) => ({
              pivot: joint.pivot,
              on: joint.on,
              point: vector(joint.point, "length"),
              force: vector(joint.force, "force"),
              alongHinge: out(joint.undecided, "force"),
              worst: vector(joint.worst, "force"),
            })),
            links: balance.forces.links.map(({ member, tension }) => ({ member, tension: out(tension, "force") })),
            hinges: balance.forces.hinges.map((hinge) => ({
              arm: hinge.arm,
              at: hinge.at,
              force: vector(hinge.force, "force"),
              moment: vector(hinge.moment, "torque"),
            })),
            struts: balance.forces.struts.map(({ name, magnitude, canBe }) => ({
              name,
              force: out(magnitude, "force"),
              canBe,
            })),
            shaftTorque: balance.forces.action.shaft ? out(balance.forces.action.shaft.inShaft, "torque") : null,
            brakeTorque: out(balance.forces.action.brakeTorque, "torque"),
          }
        : null,
    })),
  };
  return `${JSON.stringify(whole, null, 2)}\n`;
}
