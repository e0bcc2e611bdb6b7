import type { ShockGas, Spring, SpringSet } from "../../car/car.ts";
import { crossoverFromGap } from "../../springs/spring-stack.ts";
import type { GasDocument, SpringsDocument } from "../schema.ts";
import { GAS_ASSUMED, SPRINGS_ASSUMED } from "../sections/springs.ts";
import type { Resolver } from "./resolver.ts";

const PLACE = ["shock", "springs"] as const;

/** `longest`: of the shock, eye to eye, m. */
export function resolveSprings(document: SpringsDocument, longest: number, r: Resolver): SpringSet {
  const main = resolveSpring(document.main, "main", r);
  const tender = document.tender && resolveSpring(document.tender, "tender", r);
  const crossoverAt = tender && resolveCrossover(document, main, tender, longest, r);
  return {
    main,
    ...(tender ? { tender } : {}),
    ...(crossoverAt === undefined ? {} : { crossoverAt }),
    preload: r.either(document.preload, [...PLACE, "preload"], SPRINGS_ASSUMED.preload, 0),
    collarPitch: r.either(document.collarPitch, [...PLACE, "collarPitch"], SPRINGS_ASSUMED.collarPitch, 0),
  };
}

function resolveSpring(document: SpringsDocument["main"], which: "main" | "tender", r: Resolver): Spring {
  const freeLength = r.length(document.freeLength);
  const at = [...PLACE, which, "solidLength"];
  return {
    rate: r.value(document.rate, "rate"),
    freeLength,
    solidLength: r.either(document.solidLength, at, SPRINGS_ASSUMED.solidLength, freeLength),
  };
}

function resolveCrossover(
  document: SpringsDocument,
  main: Spring,
  tender: Spring,
  longest: number,
  r: Resolver,
): number | undefined {
  if (document.crossoverAt !== undefined) return r.length(document.crossoverAt);
  if (document.crossoverGap !== undefined) {
    return crossoverFromGap(longest, r.length(document.crossoverGap), main.rate, tender.rate);
  }
  const { from, because } = SPRINGS_ASSUMED.crossoverAt;
  r.note([...PLACE, "crossoverAt"], "word", from(), because);
  return undefined;
}

/** `stroke`: of the shock, m. */
export function resolveGas(document: GasDocument, stroke: number, r: Resolver): ShockGas {
  const at = (field: string) => ["shock", "gas", field];
  const none = { rodDiameter: 0, stroke };
  const rodDiameter = r.either(document.rodDiameter, at("rodDiameter"), GAS_ASSUMED.rodDiameter, none);
  return {
    kind: document.kind,
    pressure: r.either(document.pressure, at("pressure"), GAS_ASSUMED.pressure, none),
    rodDiameter,
    volume: r.either(document.volume, at("volume"), GAS_ASSUMED.volume, { rodDiameter, stroke }),
  };
}
