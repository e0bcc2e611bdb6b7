import type { Car } from "../car/car.ts";
import { type Inputs, movedBy, type UncertainCoordinate, uncertainInputs } from "../certainty/inputs.ts";
import { type Corner, makeCorner } from "../cycle/corner.ts";
import { chiSquareTail, normalLimit } from "../survey/distribution.ts";
import { DEGREE } from "../units/convert.ts";
import { type CardReading, cardReadings, cardValue } from "./card-reading.ts";
import type { LoggedReading } from "./logged-reading.ts";
import { symmetricSolver } from "./solve-symmetric.ts";

/** One way in which the car can differ from its plan. */
export type Cause =
  | { readonly kind: "point"; readonly input: UncertainCoordinate; readonly sd: number }
  | { readonly kind: "setting"; readonly setting: "camber" | "toe"; readonly sd: number };

export interface ComparedReading {
  readonly logged: LoggedReading;
  readonly card: CardReading;
  /** What the plan says, SI; null where the plan does not reach there. */
  readonly predicted: number | null;
  /** Standard deviations of prediction and of reading. */
  readonly predictedSd: number;
  readonly readingSd: number;
  /** (read − predicted) over the standard deviation of both; null where there is no prediction. */
  readonly misfit: number | null;
}

export interface Explanation {
  readonly cause: Cause;
  /** m, or rad of a setting; in the document's direction. */
  readonly by: number;
  /** Its standard deviation. */
  readonly sd: number;
  /** `by` over its standard deviation: its square is what it takes off the sum of squared misfits. */
  readonly test: number;
}

export interface AsBuiltStudy {
  readonly readings: readonly ComparedReading[];
  /** Sum of squared misfits of the plan as it stands, prediction and reading both counted; and the chance of as much or more. */
  readonly sum: number;
  readonly probability: number;
  /** Whether plan and car agree as well as tape and building allow. */
  readonly agrees: boolean;
  /** Single causes, the likeliest first; those that the readings cannot tell from the first are `alike`. */
  readonly explanations: readonly Explanation[];
  readonly alike: number;
  /** Every cause together within the build tolerances, the least that explains the readings. */
  readonly together: readonly { readonly cause: Cause; readonly by: number }[];
  /** The plan moved to the likeliest single cause. */
  readonly explained: Car | null;
}

/** Nobody builds farther off than this, m and rad: what would have to be, explains nothing. */
const MOST_POINT = 0.04;
const MOST_SETTING = 5 * DEGREE;
/** Improvement in the sum of squares that tells two explanations apart: 95 % of chi-square with one degree of freedom. */
const TOLD_APART = 3.84;
/** Of honest cars so many are said not to agree: half by the sum of all misfits, half by the strongest single cause. */
const DISAGREES = 0.05;

/** The finished car against its plan: how well they agree, and what would explain it if they do not. */
export function explainAsBuilt(
  car: Car,
  log: readonly LoggedReading[],
  inputs: Inputs = uncertainInputs(car),
): AsBuiltStudy {
  const corner = makeCorner(car);
  const cards = new Map(cardReadings(corner).map((card) => [card.kind, card]));
  const used = log.flatMap((logged) => {
    const card = cards.get(logged.kind);
    return card ? [{ logged, card }] : [];
  });
  const predict = (of: Corner): (number | null)[] => used.map(({ logged, card }) => cardValue(of, card, logged.travel));
  const planned = predict(corner);
  const causes: readonly Cause[] = [
    ...inputs.list.map(
      (input): Cause =>
        input.kind === "point"
          ? { kind: "point", input, sd: input.sd }
          : { kind: "setting", setting: input.setting, sd: input.sd },
    ),
  ];
  const readingSd = used.map(({ logged, card }) => (logged.plusMinus ?? card.plusMinus) / 2);
  // What is off, and how it follows each cause.
  const known = planned.map((value) => value !== null);
  const off = used.map(({ logged }, k) => (known[k] ? logged.reads - planned[k]! : 0));
  const slopes = causes.map((cause) => slopeOf(car, cause, predict));
  const prior = priorOf(inputs);
  const variance = used.map((_, k) =>
    slopes.reduce(
      (sum, row, i) => sum + slopes.reduce((inner, other, j) => inner + row[k]! * prior(i, j) * other[k]!, 0),
      0,
    ),
  );
  const readings = used.map(({ logged, card }, k): ComparedReading => {
    const total = Math.sqrt(variance[k]! + readingSd[k]! ** 2);
    return {
      logged,
      card,
      predicted: planned[k]!,
      predictedSd: Math.sqrt(Math.max(variance[k]!, 0)),
      readingSd: readingSd[k]!,
      misfit: known[k] ? off[k]! / total : null,
    };
  });
  const rows = readings.flatMap(({ misfit }, k) => (misfit === null ? [] : [k]));
  const both = rows.map((k) =>
    rows.map((l) => {
      let sum = k === l ? readingSd[k]! ** 2 : 0;
      slopes.forEach((row, i) => {
        slopes.forEach((other, j) => {
          const p = prior(i, j);
          if (p !== 0) sum += row[k]! * p * other[l]!;
        });
      });
      return sum;
    }),
  );
  const solve = symmetricSolver(both);
  const shown = rows.map((k) => off[k]!);
  const solved = solve(shown);
  const sum = rows.reduce((total, k, r) => total + off[k]! * solved[r]!, 0);
  const probability = rows.length === 0 ? 1 : chiSquareTail(sum, rows.length);
  const singles = causes
    .flatMap((cause, i) =>
      single(
        cause,
        rows.map((k) => slopes[i]![k]!),
        shown,
        solve,
      ),
    )
    .sort((a, b) => b.test ** 2 - a.test ** 2);
  const best = singles[0];
  const together = causes.map((cause, i) => ({
    cause,
    by: causes.reduce(
      (total, _, j) => total + prior(i, j) * rows.reduce((inner, k, r) => inner + slopes[j]![k]! * solved[r]!, 0),
      0,
    ),
  }));
  return {
    readings,
    sum,
    probability,
    agrees: probability > DISAGREES / 2 && (!best || Math.abs(best.test) < normalLimit(DISAGREES / 2 / causes.length)),
    explanations: singles.slice(0, 8),
    alike: best ? singles.filter(({ test }) => best.test ** 2 - test ** 2 < TOLD_APART).length : 0,
    together: together
      .filter(({ cause, by }) => Math.abs(by) > 0.25 * cause.sd)
      .sort((a, b) => Math.abs(b.by / b.cause.sd) - Math.abs(a.by / a.cause.sd)),
    explained: best && rows.length > 0 ? withCause(car, best.cause, best.by) : null,
  };
}

/** The car with one cause at work. */
export function withCause(car: Car, cause: Cause, by: number): Car {
  return movedBy(car, cause.kind === "point" ? cause.input : cause, by);
}

type Predict = (corner: Corner) => readonly (number | null)[];

function slopeOf(car: Car, cause: Cause, predict: Predict): Float64Array {
  const step = cause.kind === "point" ? 5e-4 : 1e-3;
  const up = predict(makeCorner(withCause(car, cause, step)));
  const down = predict(makeCorner(withCause(car, cause, -step)));
  return Float64Array.from(up, (high, k) => {
    const low = down[k] ?? null;
    return high === null || low === null ? 0 : (high - low) / (2 * step);
  });
}

/** Covariance of two causes. */
const priorOf =
  ({ covariance }: Inputs) =>
  (i: number, j: number): number =>
    covariance[i]![j]!;

/**
 * One cause alone beside the errors of building and reading, as large as fits best: generalised least squares,
 * a = sᵀV⁻¹d / sᵀV⁻¹s with u(a) = 1/√(sᵀV⁻¹s), d the misfits, s how they follow the cause, V their covariance (as Baarda's
 * test for one error at a time, with the causes in the place of readings). Nothing where no reading follows it.
 */
function single(
  cause: Cause,
  slope: readonly number[],
  shown: readonly number[],
  solve: (b: readonly number[]) => readonly number[],
): Explanation[] {
  const weighted = solve(slope);
  const dot = (other: readonly number[]): number => weighted.reduce((sum, value, r) => sum + value * other[r]!, 0);
  const weight = dot(slope);
  if (!(weight > 1e-6)) return [];
  const by = dot(shown) / weight;
  const sd = 1 / Math.sqrt(weight);
  const most = cause.kind === "point" ? MOST_POINT : MOST_SETTING;
  return Math.abs(by) > most ? [] : [{ cause, by, sd, test: by / sd }];
}
