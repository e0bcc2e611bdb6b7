import type { Vec3 } from "../geometry/vec3.ts";
import type { Judged } from "./judge.ts";

/** Where on the car a clearance limit bites, m; undefined for limits that are not at one spot. */
export const contactAt = ({ travel }: Pick<Judged, "travel">, limitId: string): Vec3 | undefined =>
  travel.clearances.find(({ id }) => limitId === `clearance:${id}`)?.at;
