import type { Car, Linkage } from "../car/car.ts";
import { sectionProperties } from "../frames/section.ts";
import { distance } from "../geometry/vec3.ts";
import { kindOf } from "../linkage/kinds.ts";
import { linkTubes } from "./arm-frames.ts";
import { eccentricColumnForce } from "./column.ts";
import { welded } from "./material.ts";
import { type PartCheck, worstOf } from "./part-check.ts";
import type { PartForces } from "./part-forces.ts";

/** Links, pulled and pushed, with kg of each. */
export function checkLinks(
  car: Car,
  cases: readonly PartForces[],
): { readonly checks: readonly PartCheck[]; readonly masses: readonly PartMass[] } {
  const tubes = linkTubes(car);
  const links = kindOf<Linkage>(car.linkage)
    .members(car.linkage)
    .filter(({ body }) => body === "link");
  const checks: PartCheck[] = [];
  const masses: PartMass[] = [];
  for (const { id, label, diameter, from, to } of links) {
    const { wall, material } = tubes[id]!;
    const { area, iy } = sectionProperties({ shape: "round-tube", diameter, wall: Math.min(wall, diameter / 2) });
    const length = distance(from.point, to.point);
    const eccentricity = car.strength?.tubes[id]?.eccentricity ?? 0;
    const column = { area, inertia: iy, effectiveLength: length, young: material.young, yield: material.yield };
    const tension = (each: PartForces): number => each.links[id] ?? 0;
    const loads = (sign: 1 | -1) =>
      cases.map((each) => ({
        loadCase: each.name,
        travel: each.travel,
        demand: Math.max(0, sign * tension(each)),
      }));
    checks.push(
      worstOf(
        {
          part: id,
          label,
          check: "link-pushed",
          allowable: eccentricColumnForce(column, eccentricity, diameter / 2),
          dimension: "force",
          basis: `column with ball ends (Johnson, Euler) of ${material.name}, pushed off its middle line as entered (secant formula)`,
        },
        loads(-1),
      ),
      worstOf(
        {
          part: id,
          label,
          check: "link-pulled",
          allowable: area * welded(material),
          dimension: "force",
          basis: `the tube of ${material.name} beside its weld`,
        },
        loads(1),
      ),
    );
    masses.push({ part: id, label, mass: area * length * material.density });
  }
  return { checks, masses };
}

/** kg, tubes alone. */
export interface PartMass {
  readonly part: string;
  readonly label: string;
  readonly mass: number;
}
