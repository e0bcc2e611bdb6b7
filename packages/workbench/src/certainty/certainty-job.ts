import {
  type Car,
  cycleCertainty,
  type Share,
  type Study,
  sayInput,
  sayInputKind,
  sayMatter,
  study,
  uncertainInputs,
} from "@armwright/engine";
import { type CarDocument, readCarValue } from "@armwright/engine/document";
import type { Job } from "../jobs/job.ts";

export interface CertaintyInput {
  readonly document: CarDocument;
  readonly side: "left" | "right";
}

/** What brings part of a ±, in words. */
export interface CauseShare {
  readonly words: string;
  readonly kind: string;
  /** 0…1 */
  readonly share: number;
}

/** One quantity at one travel: about 95 in 100 cars lie between; null where no ± can be told. */
export interface Between {
  readonly travel: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly causes: readonly CauseShare[];
}

export interface LimitSure {
  readonly direction: "bump" | "droop";
  readonly id: string;
  /** Travel left to it from the chosen stop, m. */
  readonly left: number;
  /** Standard deviation of the travel left to it from the stop, m. */
  readonly sd: number;
  /** 0…1: of cars built so, those in which it comes before the stop. */
  readonly chance: number;
  readonly causes: readonly CauseShare[];
}

/** What to be careful with, and what hangs on it. */
export interface MatterSaid {
  readonly words: string;
  readonly kind: string;
  readonly weight: number;
  readonly of: readonly string[];
}

export interface CertaintyAnswer {
  /** By the quantity's id, travel by travel, from the lowest. */
  readonly quantities: Readonly<Record<string, readonly Between[]>>;
  readonly limits: readonly LimitSure[];
  readonly matters: readonly MatterSaid[];
  readonly isGiven: boolean;
}

/** Heights on either side of ride height. */
const HEIGHTS = 4;

/** How sure the study is: every quantity from stop to stop, every near limit, and what matters most. */
export const certaintyJob: Job<CertaintyInput, CertaintyAnswer> = async ({ document, side }, { pause }) => {
  const reading = readCarValue(document);
  if (!reading.ok) throw new Error("the car has faults: mend them first");
  const car = side === "right" ? (reading.car.right ?? reading.car) : reading.car;
  const made = study(car);
  await pause();
  const cycle = cycleCertainty(car, heightsOf(made), uncertainInputs(car));
  await pause();
  const { limits } = made.certainty;
  const quantities: Record<string, Between[]> = {};
  for (const { quantity, travel, low, high, causes } of cycle.readings) {
    quantities[quantity.id] ??= [];
    quantities[quantity.id]?.push({ travel, low, high, causes: said(causes) });
  }
  return {
    quantities,
    limits: limits.map(({ direction, limit, left, sd, chance, causes }) => ({
      direction,
      id: limit.id,
      left,
      sd,
      chance,
      causes: said(causes),
    })),
    matters: mattersOf(made, car),
    isGiven: cycle.isGiven,
  };
};

function heightsOf({ travel: { droop, bump } }: Study): readonly number[] {
  const steps = Array.from({ length: HEIGHTS }, (_, k) => (k + 1) / HEIGHTS);
  return [
    ...steps.map((step) => step * droop.stop.travel).reverse(),
    0,
    ...steps.map((step) => step * bump.stop.travel),
  ];
}

const said = (causes: readonly Share[]): readonly CauseShare[] =>
  causes.map(({ input, share }) => ({ words: sayInput(input), kind: sayInputKind(input), share }));

const mattersOf = ({ certainty: { matters } }: Study, { survey }: Car): readonly MatterSaid[] =>
  matters.map(({ source, weight, of }) => ({
    words: sayMatter(source, survey),
    kind: source.kind === "reading" ? "reading" : sayInputKind(source.input),
    weight,
    of: of.map(({ result }) => (result.kind === "limit" ? `${result.label} in ${result.direction}` : result.label)),
  }));
