import type { Car } from "../../car/car.ts";
import type { DamperEntry, DamperWay } from "../../landing/damper-curve.ts";
import { type CasePlace, COMMON_CASES, type LoadCase, type LoadsEntry } from "../../loads/load-case.ts";
import type { CarDocument, DamperDocument, LoadsDocument } from "../schema.ts";
import { DAMPER_ASSUMED } from "../sections/damper.ts";
import { CASE_PLACES, LOADS_ASSUMED } from "../sections/loads.ts";
import { makeResolver, type Resolver } from "./resolver.ts";

/** The left corner with what the document says of loads and damping, where it says something. */
export function withLoads(left: Car, document: CarDocument): Car {
  if (!document.loads && !document.damper) return left;
  const r = makeResolver(document.units, "left");
  const own = {
    ...(document.loads && { loads: resolveLoads(document.loads, r) }),
    ...(document.damper && { damper: resolveDamper(document.damper, r) }),
  };
  return { ...left, ...own, assumed: [...left.assumed, ...r.assumed] };
}

function resolveLoads(document: LoadsDocument, r: Resolver): LoadsEntry {
  const { engineTorque, gearing, cases = [] } = document;
  return {
    grip: r.either(document.grip, ["loads", "grip"], LOADS_ASSUMED.grip, undefined),
    ...(engineTorque === undefined ? {} : { engineTorque: r.value(engineTorque, "torque") }),
    ...(gearing === undefined ? {} : { gearing: r.value(gearing, "ratio") }),
    wheelShare: r.either(document.wheelShare, ["loads", "wheelShare"], LOADS_ASSUMED.wheelShare, undefined),
    cases: casesOf(cases, r),
  };
}

type CaseDocument = NonNullable<LoadsDocument["cases"]>[number];

/** A case that is not of the table begins with the corner's own weight at ride height. */
const PLAIN: Omit<LoadCase, "name"> = {
  at: "ride",
  carrier: "shock",
  vertical: 1,
  inward: 0,
  forward: 0,
  acts: "contact",
  of: "corner",
  turning: "rolling",
  isLimited: false,
  from: "the document",
};

/** The table in its order with what the document changes, then what it adds; the last word on a name counts. */
function casesOf(documents: readonly CaseDocument[], r: Resolver): readonly LoadCase[] {
  const cases = new Map(COMMON_CASES.map((each) => [each.name, each]));
  for (const document of documents) {
    if (document.skip === "yes") cases.delete(document.name);
    else cases.set(document.name, caseOf(document, cases.get(document.name) ?? { ...PLAIN, name: document.name }, r));
  }
  return [...cases.values()];
}

function caseOf(document: CaseDocument, base: LoadCase, r: Resolver): LoadCase {
  const number = (typed: number | string | undefined, otherwise: number): number =>
    typed === undefined ? otherwise : r.value(typed, "ratio");
  return {
    name: document.name,
    at: document.at === undefined ? base.at : placeOf(document.at, r),
    carrier: document.carrier ?? base.carrier,
    vertical: number(document.vertical, base.vertical),
    inward: number(document.inward, base.inward),
    forward: number(document.forward, base.forward),
    acts: document.acts ?? base.acts,
    of: document.of ?? base.of,
    turning: document.turning ?? base.turning,
    isLimited: document.limited === undefined ? base.isLimited : document.limited === "yes",
    from: "the document",
  };
}

const placeOf = (typed: number | string, r: Resolver): CasePlace =>
  CASE_PLACES.find((place) => place === typed) ?? r.length(typed);

function resolveDamper(document: DamperDocument, r: Resolver): DamperEntry {
  const way = (name: "bump" | "rebound"): DamperWay => {
    const points = document[name];
    if (points && points.length > 0) {
      const read = points.map(({ speed, force }) => ({
        speed: r.value(speed, "speed"),
        force: r.value(force, "force"),
      }));
      return { by: "curve", points: read.sort((a, b) => a.speed - b.speed) };
    }
    const field = `${name}Ratio` as const;
    return { by: "ratio", ratio: r.either(document[field], ["damper", field], DAMPER_ASSUMED[field], undefined) };
  };
  return { bump: way("bump"), rebound: way("rebound") };
}
