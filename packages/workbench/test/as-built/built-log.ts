import {
  type Car,
  cardReadings,
  cardValue,
  formatLength,
  formatNumber,
  makeCorner,
  parseQuantity,
} from "@armwright/engine";
import { type CarDocument, parsePath, readCarValue, setField, valueAt } from "@armwright/engine/document";

const INCH = 0.0254;

/** One line of a cycle log, as it stands on paper. */
export interface PaperReading {
  readonly what: string;
  /** Travel, m. */
  readonly at: number;
  readonly reads: string;
}

/** The plan with its upper link's inner end 3/16 in high. */
export function builtOff(plan: CarDocument): Car {
  const inner = "linkage.upperLink.inner.z";
  const z = parseQuantity(valueAt(plan, parsePath(inner) ?? []) as number | string, "length", plan.units);
  if (!z.ok) throw new Error("the example has an upper link");
  const reading = readCarValue(setField(plan, inner, (z.value + (3 / 16) * INCH) / INCH));
  if (!reading.ok) throw new Error("the car as built does not read");
  return reading.car;
}

/** What tape and angle finder read on a car at the heights (m), to what they can be read to. */
export function paperLog(built: Car, heights: readonly number[], kinds: readonly string[]): readonly PaperReading[] {
  const corner = makeCorner(built);
  return heights.flatMap((at) =>
    cardReadings(corner)
      .filter(({ kind }) => kinds.includes(kind))
      .flatMap((card): PaperReading[] => {
        const value = cardValue(corner, card, at);
        if (value === null) return [];
        const reads =
          card.dimension === "angle"
            ? formatNumber((value * 180) / Math.PI, 1)
            : formatLength(value, "inch-pound", { denominator: card.isFine ? 32 : 16 });
        return [{ what: card.kind, at, reads }];
      }),
  );
}
