import { quote } from "../fault.ts";
import type { Path } from "../path.ts";
import { LEAST_MESH_POINTS, MESH_ENDINGS } from "../sections/chassis-mesh.ts";
import { type PlacedFault, placed } from "../structure.ts";
import type { Look } from "./look.ts";

const FILE: Path = ["chassisMesh", "file"];
const POINTS: Path = ["chassisMesh", "points"];

/** The file is named without a folder, and there are points enough to place it by. */
export function checkChassisMesh(look: Look): readonly PlacedFault[] {
  const file = look.text(FILE);
  const points = look.value(POINTS);
  const hasOwnName =
    file === undefined ||
    file.trim() === "" ||
    (!/[/\\]/.test(file) && MESH_ENDINGS.some((ending) => file.toLowerCase().endsWith(ending)));
  return [
    ...(hasOwnName ? [] : [placed(FILE, "mesh-file", { found: quote(file), options: MESH_ENDINGS })]),
    ...(Array.isArray(points) && points.length < LEAST_MESH_POINTS
      ? [placed(POINTS, "point-count", { found: String(points.length), expected: String(LEAST_MESH_POINTS) })]
      : []),
  ];
}
