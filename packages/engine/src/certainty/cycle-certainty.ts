import type { Car } from "../car/car.ts";
import { type Corner, makeCorner, solveAt } from "../cycle/corner.ts";
import { type Quantity, quantitiesOf } from "../cycle/quantities.ts";
import { type Inputs, type UncertainInput, uncertainInputs } from "./inputs.ts";
import { slopesOf, spreadOf } from "./slopes.ts";

/** One quantity at one travel, with how sure it is. */
export interface CertainReading {
  readonly quantity: Quantity;
  readonly travel: number;
  readonly value: number | null;
  /** Standard deviation; shown as ± two of them. */
  readonly sd: number;
  /** Inputs that bring most of it, the greatest first, each with its share of the variance. */
  readonly causes: readonly { readonly input: UncertainInput; readonly share: number }[];
}

export interface CycleCertainty {
  readonly travels: readonly number[];
  readonly readings: readonly CertainReading[];
  readonly isGiven: boolean;
}

/** Inputs that are told of a reading. */
const MOST_CAUSES = 3;

/**
 * The ± of every quantity at the travels (m), by linear propagation (JCGM 100:2008, 5.2: u² = Σ Σ ∂f/∂xi ∂f/∂xj u(xi, xj))
 * through the solved motion. Camber and toe at ride height are set on the finished car and so are certain there.
 */
export function cycleCertainty(
  car: Car,
  travels: readonly number[],
  inputs: Inputs = uncertainInputs(car),
): CycleCertainty {
  const corner = makeCorner(car);
  const quantities = quantitiesOf(corner);
  const results = (of: Car): readonly (number | null)[] => readAll(makeCorner(of), quantities, travels);
  const spreads = spreadOf(slopesOf(car, inputs.list, results), inputs.covariance);
  const values = readAll(corner, quantities, travels);
  const readings = travels.flatMap((travel, t) =>
    quantities.map((quantity, q): CertainReading => {
      const k = t * quantities.length + q;
      const { sd, shares } = spreads[k]!;
      return { quantity, travel, value: values[k]!, sd, causes: mostOf(inputs, shares) };
    }),
  );
  return { travels, readings, isGiven: inputs.isGiven };
}

function mostOf({ list }: Inputs, shares: Float64Array): CertainReading["causes"] {
  return list
    .map((input, i) => ({ input, share: shares[i]! }))
    .filter(({ share }) => share > 0.01)
    .sort((a, b) => b.share - a.share)
    .slice(0, MOST_CAUSES);
}

/** All quantities at all travels, travel by travel; null where the linkage does not get there. */
export function readAll(
  corner: Corner,
  quantities: readonly Quantity[],
  travels: readonly number[],
): readonly (number | null)[] {
  return travels.flatMap((travel) => {
    const solved = solveAt(corner, travel);
    return quantities.map((quantity) => (solved ? quantity.read(solved.row, corner) : null));
  });
}
