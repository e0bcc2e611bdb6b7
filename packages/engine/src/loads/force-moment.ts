import { add, cross, scale, subtract, type Vec3, vec } from "../geometry/vec3.ts";

/** Forces summed at a point: their sum, N, and their moment about that point, N·m, both in vehicle axes. */
export interface ForceMoment {
  readonly force: Vec3;
  readonly moment: Vec3;
}

export const NOTHING: ForceMoment = { force: vec(0, 0, 0), moment: vec(0, 0, 0) };

/** A force (N) at a point (m) with a couple (N·m), seen from `about`. */
export const forceAt = (force: Vec3, point: Vec3, about: Vec3, couple: Vec3 = NOTHING.moment): ForceMoment => ({
  force,
  moment: add(cross(subtract(point, about), force), couple),
});

export const sum = (a: ForceMoment, b: ForceMoment): ForceMoment => ({
  force: add(a.force, b.force),
  moment: add(a.moment, b.moment),
});

export const times = (a: ForceMoment, factor: number): ForceMoment => ({
  force: scale(a.force, factor),
  moment: scale(a.moment, factor),
});
