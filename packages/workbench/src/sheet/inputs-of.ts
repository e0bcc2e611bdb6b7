import { parseQuantity, type Study } from "@armwright/engine";
import { type CarDocument, formatPath, type Path, parsePath, valueAt } from "@armwright/engine/document";
import { fieldAt } from "../form/schema-fields.ts";
import { unitOfTyped } from "../form/typed.ts";
import { bench } from "../store/bench.ts";
import { placeOnSide } from "../store/sides.ts";
import { shown, shownLength, tidy } from "../words/shown.ts";

/** An input that a result rests on: as typed, or assumed and why. */
export interface RestingOn {
  readonly path: string;
  readonly text: string;
  readonly assumed?: string;
}

/** The sections that a quantity is computed from, beside linkage and hub, which move everything. */
const SECTIONS: readonly (readonly [RegExp, readonly string[]])[] = [
  [/^(camber|toe)/, ["wheel.camber", "wheel.toe"]],
  [
    /^(halfTrack|wheelbaseChange|instantCentre|rollCentre|sideSwing)/,
    ["wheel.loadedRadius", "wheel.offset", "wheel.backspacing", "wheel.camber", "wheel.toe"],
  ],
  [/^anti/, ["wheel.loadedRadius", "targets.wheelbase", "weights.centreOfGravityHeight", "weights.rearBrakeShare"]],
  [/^(shock|motionRatio)/, ["shock"]],
  [
    /^(innerJoint|outerJoint|shaftLength|plunge|speedRipple|rippleAngle)/,
    ["driveshaft.output", "driveshaft.outer.centre", "driveshaft.yokePhase"],
  ],
  [/^slip/, ["driveshaft.output", "driveshaft.outer.centre", "driveshaft.slip"]],
  [/^strap/, ["strap"]],
  [/^bumpStop/, ["bumpStop"]],
  [/^ground/, ["underbody", "wheel.loadedRadius"]],
  [/^wheel[XYZ]/, ["wheel.offset", "wheel.backspacing"]],
];

export function inputsOf(quantity: string, document: CarDocument, study: Study): readonly RestingOn[] {
  const own = quantity.startsWith("rodEnd:") ? [formatPath(["rodEnds", quantity.slice("rodEnd:".length)])] : [];
  const places = SECTIONS.find(([pattern]) => pattern.test(quantity))?.[1] ?? [];
  const all = [...own, ...places, "wheel.hubFace", "linkage"];
  return all.flatMap((place) => restingAt(place, document, study));
}

/** The inputs at and below a place, as typed or assumed. */
export function restingAt(given: string, document: CarDocument, study: Study): readonly RestingOn[] {
  const place = placeOnSide(given, bench.getState().side, document);
  const path = parsePath(place) ?? [];
  const value = valueAt(document, path);
  const typed = value === undefined ? [] : leaves(path, value, document);
  const assumed = study.car.assumed
    .filter((each) => each.path === place || each.path.startsWith(`${place}.`) || each.path.startsWith(`${place}[`))
    .map((each) => ({
      path: each.path,
      text: typeof each.value === "string" ? each.value : shown(each.value, each.dimension, document.units),
      assumed: each.because,
    }));
  return [...typed, ...assumed];
}

/** A point is one input, not three. */
function leaves(path: Path, value: unknown, document: CarDocument): readonly RestingOn[] {
  const { units } = document;
  if (Array.isArray(value)) return value.flatMap((each, index) => leaves([...path, index], each, document));
  if (typeof value !== "object" || value === null) {
    const last = path.at(-1);
    return last === "kind" || last === "name" || last === "diameter"
      ? []
      : [{ path: formatPath(path), text: withUnit(String(value), unitAt(path, value, document)) }];
  }
  const point = value as Readonly<Record<string, unknown>>;
  if (point["x"] !== undefined && point["y"] !== undefined && point["z"] !== undefined) {
    const surveyed = point["surveyed"];
    // What comes from readings has more figures than a tape.
    const shownAt = (axis: string): string => {
      const parsed = parseQuantity(point[axis] as number | string, "length", units);
      return surveyed !== undefined && parsed.ok ? shownLength(parsed.value, units) : tidy(String(point[axis]));
    };
    const text = [
      toward(shownAt("x"), "forward", "back"),
      toward(shownAt("y"), "out", "past the middle"),
      toward(shownAt("z"), "up", "down"),
    ];
    const unit = units === "metric" ? "mm" : "in";
    return [
      {
        path: formatPath(path),
        text: `${text.join(", ")} (${unit})${typeof surveyed === "string" ? ", surveyed" : ""}`,
      },
    ];
  }
  return Object.entries(point).flatMap(([name, each]) => leaves([...path, name], each, document));
}

/** As typed, its sign said as a way. */
function toward(typed: string, positive: string, negative: string): string {
  const text = typed.trim();
  return /^[-\u2212]/.test(text) ? `${text.slice(1).trim()} ${negative}` : `${text} ${positive}`;
}

/** A degree sign stands at its number, every other unit apart. */
const withUnit = (value: string, unit: string): string => tidy(`${value}${unit === "°" ? "" : " "}${unit}`.trim());

/** The unit that a bare number of this field means. */
function unitAt(path: Path, value: unknown, document: CarDocument): string {
  const dimension = fieldAt(formatPath(path), document)?.dimension;
  return dimension ? unitOfTyped(value, dimension, document.units) : "";
}
