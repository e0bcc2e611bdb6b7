import {
  type Car,
  formatLength,
  fromUnit,
  type ShelfSpring,
  type SpringSet,
  toUnit,
  type UnitSystem,
} from "@armwright/engine";
import { type CarDocument, setField } from "@armwright/engine/document";

/** The document with these springs on its shock: preload and stop to the sixteenth (half a millimetre) that a tape reads. */
export function withSprings(document: CarDocument, springs: SpringSet, units: UnitSystem): CarDocument {
  const { main, tender, crossoverAt, preload } = springs;
  const collarPitch = document.shock?.springs?.collarPitch;
  const spring = ({ rate, freeLength, solidLength }: SpringSet["main"]) => ({
    rate: Number(toUnit(rate, "rate", units).toFixed(2)),
    freeLength: tape(freeLength, units),
    solidLength: tape(solidLength, units),
  });
  return setField(document, "shock.springs", {
    main: spring(main),
    ...(tender && { tender: spring(tender) }),
    ...(crossoverAt !== undefined && { crossoverAt: tape(crossoverAt, units) }),
    preload: tape(preload, units),
    ...(collarPitch !== undefined && { collarPitch }),
  });
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

function tape(length: number, units: UnitSystem): string | number {
  const text = formatLength(length, units);
  return /^-?[\d.]+$/.test(text) ? Number(text) : text;
}
