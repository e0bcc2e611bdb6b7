import type { Car } from "../car/car.ts";
import { formatPath } from "../document/path.ts";
import { TUBE_NAMES } from "../strength/arm-frames.ts";
import { type ArmProposal, LEAST_FACTOR } from "../strength/arm-proposals.ts";
import { weakest } from "../strength/check-arms.ts";
import { byWeakness, type PartCheck } from "../strength/part-check.ts";
import type { TubeSize } from "../strength/stock-tubes.ts";
import { type StrengthStudy, studyStrength } from "../strength/strength-study.ts";
import { type Finding, type FindingValue, length, ratio, wall } from "./finding.ts";
import type { Judged } from "./judge.ts";
import { sayCaseLoad } from "./say-loads.ts";
import { sayCheck, sayHelp } from "./say-strength.ts";

/**
 * Parts that do not bear a load case, the weakest place of each. Only parts whose size the document gives: what is assumed of
 * a tube is no fault of the car.
 */
export function judgeStrength(study: Judged): Finding[] {
  if (!study.car.strength) return [];
  const found = studyStrength(study);
  if (!found) return [];
  const arms = found.arms.flatMap(({ frame, checks }): Finding[] => {
    const worst = weakest(checks);
    const name = TUBE_NAMES[frame.arm];
    if (!worst || !isWeak(worst) || (frame.isAssumed && isAssumed(study.car, name))) return [];
    const ofArm = ({ arm }: ArmProposal): boolean => arm === frame.arm;
    const proposals = found.proposals.filter(ofArm);
    const help = proposals.length > 0 ? proposals.map(valuesOf) : found.tried.filter(ofArm).map(triedOf);
    const place = frame.isAssumed ? ["strength", "tubes", name] : ["strength", "frames", frame.arm];
    return [weakPart(found, worst, formatPath(place), help)];
  });
  const ofArms = new Set(found.arms.flatMap(({ checks }) => checks));
  const others = new Map<string, PartCheck>();
  for (const check of [...found.checks].sort(byWeakness)) {
    if (ofArms.has(check) || !isWeak(check) || others.has(check.part)) continue;
    if (check.check.startsWith("link-") && isAssumed(study.car, check.part)) continue;
    others.set(check.part, check);
  }
  return [...arms, ...[...others.values()].map((check) => weakPart(found, check, placeOf(check), []))];
}

const isWeak = ({ factor }: PartCheck): boolean => factor !== null && factor < LEAST_FACTOR;

const isAssumed = ({ assumed }: Car, tube: string): boolean =>
  assumed.some(({ path }) => path === formatPath(["strength", "tubes", tube, "wall"]));

function weakPart(
  { cases }: StrengthStudy,
  check: PartCheck,
  place: string,
  help: readonly Readonly<Record<string, FindingValue>>[],
): Finding {
  const loadCase = cases.find((each) => each.loadCase.name === check.loadCase)!.loadCase;
  return {
    code: "part-weak",
    gravity: "must",
    place,
    travel: check.travel,
    ...(check.at && { at: check.at }),
    source: `load case: ${loadCase.from}; strength: ${check.basis}`,
    values: {
      part: check.label,
      where: check.where,
      what: sayCheck(check.check),
      case: loadCase.name,
      load: `${sayCaseLoad(loadCase)}${loadCase.of === "corner" ? " of one rear wheel's weight on the scale" : ""}`,
      from: loadCase.from,
      factor: ratio(check.factor!),
      demand: { value: check.demand, dimension: check.dimension },
      allowable: { value: check.allowable, dimension: check.dimension },
      basis: check.basis,
      help: sayHelp(check.check),
      ...Object.assign({}, ...help),
    },
  };
}

/** Where a part that is no arm is given in the document. */
function placeOf({ check, part }: PartCheck): string {
  const section = check.startsWith("link-")
    ? "tubes"
    : check.startsWith("rod-end")
      ? "rodEnds"
      : check === "tab-weld"
        ? "welds"
        : check.startsWith("tab-")
          ? "tabs"
          : check.startsWith("bolt-")
            ? "bolts"
            : null;
  return section ? `strength.${section}` : formatPath(["strength", part]);
}

const mass = (value: number): FindingValue => ({ value, dimension: "mass" });

/** The figures of one proposal, under names that its sentence knows. */
function valuesOf({ kind, change, weakest: least, added }: ArmProposal): Readonly<Record<string, FindingValue>> {
  const { gusset, under } = change;
  const name = NAMES[kind];
  return {
    ...tubesOf(name, kind === "second-tube" ? { ...change, under: undefined } : change),
    ...(kind === "gusset" && {
      gussetThickness: length(gusset!.thickness),
      gussetDepth: length(gusset!.depth),
      gussetReach: length(gusset!.reach),
    }),
    ...(kind === "second-tube" && {
      secondDiameter: length(under!.diameter),
      secondWall: wall(under!.wall),
      secondDrop: length(under!.drop),
    }),
    ...(least.factor === null ? {} : { [`${name}Factor`]: ratio(least.factor) }),
    [`${name}Added`]: mass(added),
  };
}

const NAMES = { "next-size": "size", gusset: "gusset", "second-tube": "second" } as const satisfies Readonly<
  Record<ArmProposal["kind"], string>
>;

/** `sizeMainDiameter`, `gussetCrossWall`: tubes that are made larger with a way. */
const tubesOf = (
  name: string,
  {
    main,
    cross,
    under,
  }: { readonly main?: TubeSize; readonly cross?: TubeSize; readonly under?: TubeSize | undefined },
): Readonly<Record<string, FindingValue>> =>
  Object.assign(
    {},
    ...Object.entries({ Main: main, Cross: cross, Under: under }).map(
      ([role, size]) =>
        size && { [`${name}${role}Diameter`]: length(size.diameter), [`${name}${role}Wall`]: wall(size.wall) },
    ),
  );

/** How far a way comes that is not enough. */
const triedOf = ({ kind, weakest: least }: ArmProposal): Readonly<Record<string, FindingValue>> =>
  least.factor === null ? {} : { [`${NAMES[kind]}Tried`]: ratio(least.factor) };
