import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { BodyId, Car, Linkage } from "../../src/car/car.ts";
import { makeCorner } from "../../src/cycle/corner.ts";
import { add, cross, length, midpoint, subtract, type Vec3 } from "../../src/geometry/vec3.ts";
import type { CornerForces } from "../../src/loads/corner-forces.ts";
import { balance } from "../../src/loads/equilibrium.ts";
import { carOf } from "../sample-cars.ts";

// Forces by the general multibody library libsimbody; made by reference/loads/rebuild.sh.
interface Carried {
  readonly name: string;
  readonly about: Vec3;
  readonly force: Vec3;
  readonly moment: Vec3;
}
interface LoadedCar {
  readonly kind: Linkage["kind"];
  readonly geometry: string;
  readonly shock: { readonly upper: Vec3; readonly lower: Vec3; readonly on: BodyId };
  readonly cases: readonly {
    readonly travel: number;
    readonly contact: Vec3;
    readonly centre: Vec3;
    readonly turning: "rolling" | "brake";
    readonly shockForce: number;
    readonly links: Readonly<Record<string, number>>;
    readonly joints: readonly Carried[];
  }[];
}
const read = (path: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../../../reference/${path}`, import.meta.url), "utf8"));
const loaded = read("loads/forces.json") as { readonly cars: readonly LoadedCar[] };
const moved = read("multibody/cycle.json") as {
  readonly cars: readonly {
    readonly kind: string;
    readonly geometry: string;
    readonly linkage: Linkage;
    readonly wheelCentre: Vec3;
    readonly spinAxis: Vec3;
  }[];
};

/** Of the largest force of the case: what is left is the library's own iteration. Measured: at most 3e-11. */
const TOLERANCE = 1e-10;

function carFor({ kind, geometry, shock }: LoadedCar): Car {
  const { linkage, wheelCentre, spinAxis } = moved.cars.find((car) => car.kind === kind && car.geometry === geometry)!;
  const whole =
    linkage.kind === "trailing-arm"
      ? { ...linkage, trailingArm: { ...linkage.trailingArm, hub: wheelCentre } }
      : linkage;
  const car = carOf({ linkage: whole, wheelCentre }, -Math.asin(spinAxis.z), Math.atan2(spinAxis.x, spinAxis.y));
  return {
    ...car,
    shock: {
      ...car.shock!,
      upper: { point: shock.upper, on: "chassis" },
      lower: { point: shock.lower, on: shock.on },
    },
  };
}

/** Force and moment of one of the library's joints as ours name it, both on the outboard body. */
function ours(
  forces: CornerForces,
  name: string,
): { readonly about: Vec3; readonly force: Vec3; readonly moment: Vec3 } {
  const [member, end] = name.split(".") as [string, string];
  const joints = forces.joints.filter(({ pivot }) =>
    end === "pivots" ? pivot.startsWith(`${member}.`) : pivot.startsWith(name),
  );
  const [one, other] = joints;
  if (!one) throw new Error(`no joint ${name}`);
  const about = other ? midpoint(one.point, other.point) : one.point;
  const force = joints.map((joint) => joint.force).reduce(add);
  const moment = joints.map((joint) => cross(subtract(joint.point, about), joint.force)).reduce(add);
  return { about, force, moment };
}

describe("forces of every kind against a general multibody library", () => {
  it.each(loaded.cars.map((car) => [`${car.kind} ${car.geometry}`, car] as const))("%s", (_, reference) => {
    const corner = makeCorner(carFor(reference));
    expect(reference.cases).toHaveLength(12);
    for (const { travel, contact, centre, turning, shockForce, links, joints } of reference.cases) {
      const found = balance(corner, { travel, load: { contact, centre, turning: { by: turning } }, carrier: "shock" });
      if (!found.ok) throw new Error(found.reason);
      const { forces } = found;
      const most = Math.max(shockForce, ...joints.map(({ force }) => length(force)), length(contact), length(centre));
      const near = (a: number, b: number, what: string) =>
        expect(Math.abs(a - b) / most, `${what}, ${turning} at ${travel}`).toBeLessThan(TOLERANCE);
      near(forces.struts.find(({ name }) => name === "shock")!.magnitude, shockForce, "shock");
      expect(forces.links.length).toBe(Object.keys(links).length);
      for (const { member, tension } of forces.links) near(tension, links[member.replace(/^links\./, "")]!, member);
      for (const joint of joints) {
        const own = ours(forces, joint.name);
        near(length(subtract(own.force, joint.force)), 0, joint.name);
        const moment = add(joint.moment, cross(subtract(joint.about, own.about), joint.force));
        // Ours of a single ball is nothing by its kind; N·m of an arm about a metre long beside N.
        near(length(subtract(own.moment, moment)), 0, `moment of ${joint.name}`);
      }
    }
  });
});
