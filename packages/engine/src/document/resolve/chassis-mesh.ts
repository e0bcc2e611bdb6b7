import type { ChassisMesh } from "../../car/car.ts";
import type { ChassisMeshDocument } from "../schema.ts";
import { CHASSIS_MESH_ASSUMED } from "../sections/chassis-mesh.ts";
import type { Resolver } from "./resolver.ts";

/** Spots on the mesh stay in the file's own axes and unit: only the placing tells what that unit is. */
export function resolveChassisMesh({ file, clearance, points }: ChassisMeshDocument, r: Resolver): ChassisMesh {
  return {
    file,
    clearance: r.either(clearance, ["chassisMesh", "clearance"], CHASSIS_MESH_ASSUMED.clearance, undefined),
    points: points.map(({ mesh, car }) => ({ mesh: { x: mesh.x, y: mesh.y, z: mesh.z }, car: r.point(car) })),
  };
}
