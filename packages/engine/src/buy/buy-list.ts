import type { Car } from "../car/car.ts";
import type { Finding } from "../findings/finding.ts";
import type { Study } from "../study/study.ts";

/** A part that money is spent on, and whether the design is far enough for it. */
export interface BuyLine {
  readonly part: BoughtPart;
  /** What still has to happen on the car before it is bought, whatever the design says; common practice. */
  readonly after: "the design is settled" | "the car is tacked and cycled" | "the car is weighed";
  /** Nothing in the document speaks against it. */
  readonly isSettled: boolean;
  /** Findings on what it depends on, other than notes. */
  readonly findings: readonly Finding[];
  /** Places of the document that it depends on and that are not there. */
  readonly missing: readonly string[];
  /** Places of the document that it depends on and whose value was put in for the builder. */
  readonly assumed: readonly string[];
}

export type BoughtPart =
  | "tyre and wheel"
  | "shaft joints"
  | "rod ends, bungs and bolts"
  | "tube"
  | "shock"
  | "bump stop"
  | "strap"
  | "half shaft"
  | "springs";

interface Rule {
  readonly part: BoughtPart;
  readonly after: BuyLine["after"];
  /** Sections it depends on: a change there may make it the wrong one. */
  readonly on: readonly string[];
  /** What must be in the document. */
  readonly needs: readonly ((car: Car) => string | null)[];
}

const there = (place: string, has: (car: Car) => unknown) => (car: Car) => (has(car) === undefined ? place : null);

const SHOCK = there("shock", ({ shock }) => shock);
const SHAFT = there("driveshaft", ({ driveshaft }) => driveshaft);

/**
 * In the order to buy: what everything else is built round first, what only the tacked car can tell last. Common practice:
 * shocks bought before the geometry is settled and shafts cut from one measurement at ride height are what costs most.
 */
const RULES: readonly Rule[] = [
  { part: "tyre and wheel", after: "the design is settled", on: ["wheel", "targets.trackWidth"], needs: [] },
  {
    part: "shaft joints",
    after: "the design is settled",
    on: ["driveshaft.inner", "driveshaft.outer", "driveshaft.output"],
    needs: [
      SHAFT,
      ({ driveshaft }) =>
        driveshaft && driveshaft.inner.angleLimit === undefined ? "driveshaft.inner.angleLimit" : null,
      ({ driveshaft }) =>
        driveshaft && driveshaft.outer.angleLimit === undefined ? "driveshaft.outer.angleLimit" : null,
    ],
  },
  {
    part: "rod ends, bungs and bolts",
    after: "the design is settled",
    on: ["rodEnds", "linkage", "strength"],
    needs: [
      ({ rodEnds }) =>
        rodEnds.some(({ misalignmentLimit }) => misalignmentLimit === undefined)
          ? "rodEnds[*].misalignmentLimit"
          : null,
    ],
  },
  { part: "tube", after: "the design is settled", on: ["linkage", "strength"], needs: [] },
  {
    part: "shock",
    after: "the car is tacked and cycled",
    on: ["shock", "linkage", "stops", "keepOuts", "targets"],
    needs: [SHOCK],
  },
  {
    part: "bump stop",
    after: "the car is tacked and cycled",
    on: ["bumpStop", "stops", "linkage"],
    needs: [there("bumpStop", ({ bumpStop }) => bumpStop)],
  },
  {
    part: "strap",
    after: "the car is tacked and cycled",
    on: ["strap", "stops", "linkage"],
    needs: [there("strap", ({ strap }) => strap)],
  },
  {
    part: "half shaft",
    after: "the car is tacked and cycled",
    on: ["driveshaft", "linkage", "stops", "wheel"],
    needs: [SHAFT],
  },
  {
    part: "springs",
    after: "the car is weighed",
    on: ["shock", "springs", "weights", "linkage"],
    needs: [
      SHOCK,
      there("shock.springs", ({ shock }) => shock?.springs),
      there("weights.corner", ({ chassis }) => chassis.cornerMass),
      there("weights.unsprung", ({ chassis }) => chassis.unsprungMass),
    ],
  },
];

/** What is safe to buy now, in the order to buy. */
export function buyList({ car, findings }: Pick<Study, "car" | "findings">): readonly BuyLine[] {
  return RULES.map(({ part, after, on, needs }) => {
    const open = findings.filter(
      ({ gravity, place }) => gravity !== "note" && on.some((section) => isUnder(place, section)),
    );
    const missing = [...new Set(needs.flatMap((need) => need(car) ?? []))];
    const assumed = car.assumed
      .filter(({ path, dimension }) => dimension !== "word" && on.some((section) => isUnder(path, section)))
      .map(({ path }) => path);
    return {
      part,
      after,
      isSettled: open.length === 0 && missing.length === 0 && assumed.length === 0,
      findings: open,
      missing,
      assumed,
    };
  });
}

const isUnder = (place: string, section: string): boolean =>
  place === section || place.startsWith(`${section}.`) || place.startsWith(`${section}[`);
