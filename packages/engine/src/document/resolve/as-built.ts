import type { LoggedReading } from "../../as-built/logged-reading.ts";
import { formatPath } from "../path.ts";
import type { CarDocument } from "../schema.ts";
import type { Resolver } from "./resolver.ts";

/** The cycle log in SI; readings that are still to be taken are left out. */
export function resolveLog({ readings }: NonNullable<CarDocument["asBuilt"]>, r: Resolver): readonly LoggedReading[] {
  return readings.flatMap(({ what, at, reads, degrees, plusMinus }, index): LoggedReading[] => {
    const value =
      what === "camber" ? degrees !== undefined && r.value(degrees, "angle") : reads !== undefined && r.length(reads);
    if (value === false) return [];
    return [
      {
        kind: what,
        travel: r.length(at),
        reads: value,
        ...(plusMinus !== undefined && what !== "camber" ? { plusMinus: r.length(plusMinus) } : {}),
        path: formatPath(["asBuilt", "readings", index]),
      },
    ];
  });
}
