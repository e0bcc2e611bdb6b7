import type { Car, Linkage } from "../car/car.ts";
import type { Vec3 } from "../geometry/vec3.ts";
import { kindOf } from "../linkage/kinds.ts";

/** A point of the car that can be moved: where it stands in the document and in the car. */
export interface PointPlace {
  /** In the document, e.g. `linkage.upperLink.inner`. */
  readonly path: string;
  readonly label: string;
  /** In the car. */
  readonly steps: readonly (string | number)[];
}

export const AXES = ["x", "y", "z"] as const;
export type Axis = (typeof AXES)[number];

/** A coordinate as a builder calls it: which way it grows. */
export const COORDINATE_WORDS: Readonly<Record<Axis, string>> = { x: "forward", y: "out", z: "up" };

export const pointAt = (car: Car, { steps }: PointPlace): Vec3 =>
  steps.reduce<unknown>((value, step) => (value as Readonly<Record<string | number, unknown>>)[step], car) as Vec3;

/** The car with one point put elsewhere, m. */
export const withPointAt = (car: Car, { steps }: PointPlace, point: Vec3): Car => replaced(car, steps, point) as Car;

function replaced(node: unknown, steps: readonly (string | number)[], value: unknown): unknown {
  const [step, ...rest] = steps;
  if (step === undefined) return value;
  if (Array.isArray(node)) return node.map((item: unknown, i) => (i === step ? replaced(item, rest, value) : item));
  const fields = node as Readonly<Record<string, unknown>>;
  return { ...fields, [step]: replaced(fields[step], rest, value) };
}

/** Every pivot of the linkage, with the side its bolt is on. */
export function pivotPlaces(
  linkage: Linkage,
): readonly (PointPlace & { readonly id: string; readonly side: "chassis" | "spindle" })[] {
  return kindOf<Linkage>(linkage)
    .pivots(linkage)
    .map(({ id, label, boltSide }) => {
      const steps = stepsOf(linkage, id);
      return { id, label, side: boltSide, steps: ["linkage", ...steps], path: `linkage.${pathOf(steps)}` };
    });
}

/** `links.front lower.inner` → links, 0, inner; a link's name may hold dots. */
function stepsOf(linkage: Linkage, id: string): readonly (string | number)[] {
  if (linkage.kind !== "five-link") return id.split(".");
  const end = id.slice(id.lastIndexOf(".") + 1);
  const name = id.slice("links.".length, id.lastIndexOf("."));
  return ["links", linkage.links.findIndex((link) => link.name === name), end];
}

const pathOf = (steps: readonly (string | number)[]): string =>
  steps.map((step, i) => (typeof step === "number" ? `[${step}]` : i === 0 ? step : `.${step}`)).join("");

export const SHAFT_INNER: PointPlace = {
  path: "driveshaft.output.point",
  label: "gearbox output",
  steps: ["driveshaft", "inner", "centre"],
};
export const SHAFT_OUTER: PointPlace = {
  path: "driveshaft.outer.centre",
  label: "shaft's outer joint",
  steps: ["driveshaft", "outer", "centre"],
};
