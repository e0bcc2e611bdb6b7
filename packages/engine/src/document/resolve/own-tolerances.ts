import type { Car } from "../../car/car.ts";
import { formatPath, type Path } from "../path.ts";
import type { CarDocument, Typed } from "../schema.ts";
import { makeResolver } from "./resolver.ts";

type Own = NonNullable<Car["ownTolerances"]>[number];

/** Points that are typed with a ± of their own, m, by their place in the document. The survey states its ± by itself. */
export function ownTolerancesOf(document: CarDocument): readonly Own[] {
  const { length } = makeResolver(document.units, "left");
  const found: Own[] = [];
  const walk = (node: unknown, at: Path): void => {
    if (typeof node !== "object" || node === null) return;
    const fields: Readonly<Record<string, unknown>> = Object.fromEntries(Object.entries(node));
    if ("x" in fields && "plusMinus" in fields) {
      found.push({ path: formatPath(at), plusMinus: length(fields["plusMinus"] as Typed) });
    }
    const isList = Array.isArray(node);
    for (const [key, each] of Object.entries(fields)) {
      if (at.length > 0 || (key !== "survey" && key !== "asBuilt")) walk(each, [...at, isList ? Number(key) : key]);
    }
  };
  walk(document, []);
  return found;
}
