import { angleBetween, distance, length, scale, subtract } from "../../geometry/vec3.ts";
import { SAME_POINT } from "../limits.ts";
import { formatPath, type Path } from "../path.ts";
import { type PlacedFault, placed } from "../structure.ts";
import type { Look } from "./look.ts";

/** A fault where two points that must differ are one. */
export function checkApart(
  look: Look,
  a: Path,
  b: Path,
  code: "coincide" | "zero-axis" = "coincide",
): readonly PlacedFault[] {
  const first = look.point(a);
  const second = look.point(b);
  if (!first || !second || distance(first, second) > SAME_POINT) return [];
  return [placed(b, code, { other: formatPath(a) })];
}

/** A fault where a point lies on the line through two others: an arm with no length. */
export function checkOffAxis(look: Look, at: Path, axis: readonly [Path, Path]): readonly PlacedFault[] {
  const from = look.point(axis[0]);
  const to = look.point(axis[1]);
  const point = look.point(at);
  if (!from || !to || !point || distance(from, to) <= SAME_POINT) return [];
  const out = subtract(point, from);
  const along = subtract(to, from);
  const off = length(out) * Math.abs(Math.sin(angleBetween(out, scale(along, 1 / length(along)))));
  if (off > SAME_POINT) return [];
  return [placed(at, "on-axis", { other: `${formatPath(axis[0])} and ${formatPath(axis[1])}` })];
}

/** Names that must tell things of a list apart. */
export function checkNames(look: Look, list: Path): readonly PlacedFault[] {
  const first = new Map<string, number>();
  return look.list(list).flatMap((_, index) => {
    const at = [...list, index, "name"];
    const name = look.text(at);
    if (name === undefined) return [];
    const earlier = first.get(name);
    if (earlier === undefined) {
      first.set(name, index);
      return [];
    }
    return [
      placed(at, "duplicate-name", { found: JSON.stringify(name), other: formatPath([...list, earlier, "name"]) }),
    ];
  });
}
