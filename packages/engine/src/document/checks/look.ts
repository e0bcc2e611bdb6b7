import type { Dimension, UnitSystem } from "../../car/car.ts";
import type { Vec3 } from "../../geometry/vec3.ts";
import { parseQuantity } from "../../units/quantity.ts";
import { type Path, valueAt } from "../path.ts";

/** Reads single values out of a document that may be broken elsewhere: what cannot be read is undefined. */
export interface Look {
  readonly system: UnitSystem;
  readonly value: (path: Path) => unknown;
  readonly text: (path: Path) => string | undefined;
  readonly list: (path: Path) => readonly unknown[];
  readonly fieldNames: (path: Path) => readonly string[];
  /** SI. */
  readonly quantity: (path: Path, dimension?: Dimension) => number | undefined;
  /** m, as typed: not mirrored. */
  readonly point: (path: Path) => Vec3 | undefined;
}

export function lookAt(root: unknown, system: UnitSystem): Look {
  const value = (path: Path): unknown => valueAt(root, path);
  const quantity = (path: Path, dimension: Dimension = "length"): number | undefined => {
    const typed = value(path);
    if (typeof typed !== "number" && typeof typed !== "string") return undefined;
    const parsed = parseQuantity(typed, dimension, system);
    return parsed.ok ? parsed.value : undefined;
  };
  return {
    system,
    value,
    quantity,
    text: (path) => {
      const found = value(path);
      return typeof found === "string" ? found : undefined;
    },
    list: (path) => {
      const found = value(path);
      return Array.isArray(found) ? found : [];
    },
    fieldNames: (path) => {
      const found = value(path);
      return typeof found === "object" && found !== null ? Object.keys(found) : [];
    },
    point: (path) => {
      const x = quantity([...path, "x"]);
      const y = quantity([...path, "y"]);
      const z = quantity([...path, "z"]);
      return x === undefined || y === undefined || z === undefined ? undefined : { x, y, z };
    },
  };
}

/** What a check gets: the document, and whether it is to look at the left side or at what is given for the right. */
export interface Side {
  readonly look: Look;
  /** Where the side's own sections stand: the document itself, or `right`. */
  readonly base: Path;
  readonly name: "left" | "right";
  /** Where the linkage that holds on this side stands. */
  readonly linkageAt: Path;
}
