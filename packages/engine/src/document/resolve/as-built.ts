import type { LoggedReading } from "../../as-built/logged-reading.ts";
import { formatPath } from "../path.ts";
import type { CarDocument } from "../schema.ts";
import type { Resolver } from "./resolver.ts";

/** The cycle log in SI; readings that are still to be taken are left out. */
export function resolveLog({ readings }: NonNullable<CarDocument["asBuilt"]>, r: Resolver): readonly LoggedReading[] {
  return readings.flatMap(({ what, of, at, reads, degrees, plusMinus }, index): LoggedReading[] => {
    const isAngle = what === "camber" || what === "angle";
    const value = isAngle ? degrees !== undefined && r.value(degrees, "angle") : reads !== undefined && r.length(reads);
    if (value === false) return [];
    return [
      {
        kind: what,
        ...(of !== undefined && { of }),
        travel: r.length(at),
        reads: value,
        ...(plusMinus !== undefined && !isAngle ? { plusMinus: r.length(plusMinus) } : {}),
        path: formatPath(["asBuilt", "readings", index]),
      },
    ];
  });
}
