import type { BodyId, Linkage } from "../car/car.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import { kindOf } from "../linkage/kinds.ts";

/**
 * A linkage of any kind with each of its points taken to where its body carries it. Which body carries a point, the kind's
 * members say; chassis pivots stay to the last digit.
 */
export function carriedLinkage<L extends Linkage>(linkage: L, place: (point: Vec3, on: BodyId) => Vec3): L {
  const kind = kindOf(linkage);
  const onChassis = new Set(
    kind
      .pivots(linkage)
      .filter((pivot) => pivot.boltSide === "chassis")
      .map((pivot) => pivot.point),
  );
  const carriers = new Map(
    kind.members(linkage).flatMap(({ from, to }) => [[from.point, from.on] as const, [to.point, to.on] as const]),
  );
  const carry = (point: Vec3): Vec3 => {
    const on = carriers.get(point);
    if (!on) throw new Error(`bug in armwright: no member of this ${linkage.kind} ends at one of its points`);
    return onChassis.has(point) ? point : place(point, on);
  };
  return everyPoint(linkage, carry) as L;
}

function everyPoint(value: unknown, carry: (point: Vec3) => Vec3): unknown {
  if (Array.isArray(value)) return value.map((part) => everyPoint(part, carry));
  if (typeof value !== "object" || value === null) return value;
  if (isPoint(value)) return carry(value);
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, everyPoint(part, carry)]));
}

const isPoint = (value: object): value is Vec3 => "x" in value && "y" in value && "z" in value;
