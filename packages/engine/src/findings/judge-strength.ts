import type { Car } from "../car/car.ts";
import { formatPath } from "../document/path.ts";
import type { LoadCase } from "../loads/load-case.ts";
import { TUBE_NAMES } from "../strength/arm-frames.ts";
import { type ArmProposal, LEAST_FACTOR } from "../strength/arm-proposals.ts";
import { weakest } from "../strength/check-arms.ts";
import { byWeakness, type PartCheck } from "../strength/part-check.ts";
import { type StrengthStudy, studyStrength } from "../strength/strength-study.ts";
import { formatNumber } from "../units/format.ts";
import { type Finding, type FindingValue, length, ratio, wall } from "./finding.ts";
import type { Judged } from "./judge.ts";
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
    const proposals = found.proposals.filter(({ arm }) => arm === frame.arm);
    const place = frame.isAssumed ? ["strength", "tubes", name] : ["strength", "frames", frame.arm];
    return [weakPart(found, worst, formatPath(place), proposals)];
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
  proposals: readonly ArmProposal[],
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
      load: loadWords(loadCase),
      from: loadCase.from,
      factor: ratio(check.factor!),
      demand: { value: check.demand, dimension: check.dimension },
      allowable: { value: check.allowable, dimension: check.dimension },
      basis: check.basis,
      help: sayHelp(check.check),
      ...Object.assign({}, ...proposals.map(valuesOf)),
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

/** `5 g up, 0.5 g inward` */
function loadWords({ vertical, inward, forward, of }: LoadCase): string {
  const parts = [
    [vertical, "up", "down"],
    [inward, "inward", "outward"],
    [forward, "forward", "rearward"],
  ] as const;
  const said = parts
    .filter(([g]) => g !== 0)
    .map(([g, plus, minus]) => `${Number(formatNumber(Math.abs(g), 2))} g ${g > 0 ? plus : minus}`);
  return `${said.join(", ")} of ${of === "corner" ? "one rear wheel's weight on the scale" : "what is unsprung"}`;
}

const mass = (value: number): FindingValue => ({ value, dimension: "mass" });

/** The figures of one proposal, under names that its sentence knows. */
function valuesOf({ kind, change, weakest: least, added }: ArmProposal): Readonly<Record<string, FindingValue>> {
  const { main, cross, under, gusset } = change;
  const found = (name: string) => ({
    ...(least.factor === null ? {} : { [`${name}Factor`]: ratio(least.factor) }),
    [`${name}Added`]: mass(added),
  });
  switch (kind) {
    case "next-size":
      return {
        ...(main && { mainDiameter: length(main.diameter), mainWall: wall(main.wall) }),
        ...(cross && { crossDiameter: length(cross.diameter), crossWall: wall(cross.wall) }),
        ...(under && { underDiameter: length(under.diameter), underWall: wall(under.wall) }),
        ...found("size"),
      };
    case "gusset":
      return {
        gussetThickness: length(gusset!.thickness),
        gussetDepth: length(gusset!.depth),
        gussetReach: length(gusset!.reach),
        ...found("gusset"),
      };
    case "second-tube":
      return {
        secondDiameter: length(under!.diameter),
        secondWall: wall(under!.wall),
        secondDrop: length(under!.drop),
        ...found("second"),
      };
  }
}
