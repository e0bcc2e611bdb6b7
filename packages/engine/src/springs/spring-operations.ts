import type { Car, SpringSet, UnitSystem } from "../car/car.ts";
import type { Operation } from "../document/operation.ts";
import { fromUnit, toUnit } from "../units/convert.ts";
import { typedLength } from "../units/typed.ts";
import type { ShelfSpring } from "./spring-choice.ts";

/** The edits that put a set of springs on the shock: preload and stop on the tape's marks. The collar's pitch stays. */
export function springOperations(
  { main, tender, crossoverAt, preload }: SpringSet,
  units: UnitSystem,
): readonly Operation[] {
  const spring = ({ rate, freeLength, solidLength }: SpringSet["main"]) => ({
    rate: Number(toUnit(rate, "rate", units).toFixed(2)),
    freeLength: typedLength(freeLength, units),
    solidLength: typedLength(solidLength, units),
  });
  const at = "shock.springs";
  return [
    { path: `${at}.main`, value: spring(main) },
    { path: `${at}.tender`, value: tender && spring(tender) },
    { path: `${at}.crossoverGap`, value: undefined },
    { path: `${at}.crossoverAt`, value: crossoverAt === undefined ? undefined : typedLength(crossoverAt, units) },
    { path: `${at}.preload`, value: typedLength(preload, units) },
  ];
}

/** A car whose shock has no springs yet, with one off the shelf, so that its weights can be read and others be chosen. */
export function withTrialSpring(car: Car, { rate, freeLength, solidLength }: ShelfSpring): Car {
  const { shock } = car;
  if (!shock || shock.springs) return car;
  const springs: SpringSet = {
    main: { rate, freeLength, solidLength },
    preload: 0,
    collarPitch: fromUnit(1 / 16, "length", "inch-pound"),
  };
  return { ...car, shock: { ...shock, springs } };
}
