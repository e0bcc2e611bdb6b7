import type { StrengthEntry } from "./entry.ts";
import { SHEAR_OF_YIELD } from "./material.ts";
import { type PartCheck, worstOf } from "./part-check.ts";
import type { PartForces } from "./part-forces.ts";
import { shaftBending, shaftShear } from "./shaft.ts";

/** Half shaft and stub, as far as the document gives them. */
export function checkShaft({ shaft, stub }: StrengthEntry, cases: readonly PartForces[]): readonly PartCheck[] {
  const loads = (size: (forces: PartForces) => number) =>
    cases.map((each) => ({ loadCase: each.name, travel: each.travel, demand: size(each) }));
  const checks: PartCheck[] = [];
  if (shaft) {
    checks.push(
      worstOf(
        {
          part: "shaft",
          label: "half shaft",
          check: "shaft-torsion",
          allowable: SHEAR_OF_YIELD * shaft.material.yield,
          dimension: "stress",
          basis: `yield of ${shaft.material.name} in shear (÷ √3), no notch`,
        },
        loads((each) => shaftShear(shaft.diameter, shaft.bore, each.shaftTorque)),
      ),
    );
    if (shaft.jointTorque !== undefined) {
      checks.push(
        worstOf(
          {
            part: "shaft",
            label: "half shaft's joint",
            check: "shaft-joint",
            allowable: shaft.jointTorque,
            dimension: "torque",
            basis: "the rating that was entered",
          },
          loads((each) => each.shaftTorque),
        ),
      );
    }
  }
  if (stub) {
    checks.push(
      worstOf(
        {
          part: "stub",
          label: "stub axle, at the outer bearing",
          check: "stub-bending",
          allowable: stub.material.yield,
          dimension: "stress",
          basis: `yield of ${stub.material.name}, bending and torque together (von Mises), no notch`,
        },
        loads((each) =>
          Math.hypot(
            shaftBending(stub.diameter, stub.bore, each.stubBending),
            shaftShear(stub.diameter, stub.bore, each.shaftTorque) / SHEAR_OF_YIELD,
          ),
        ),
      ),
    );
  }
  return checks;
}
