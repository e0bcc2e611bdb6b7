import { studyStops } from "../stops/study-stops.ts";
import { angle, type Finding, type FindingValue, length } from "./finding.ts";
import type { Judged } from "./judge.ts";

const PRACTICE = "common practice";

/** Strap and bump stop: what they have to take, how they stand to it. Where they end the travel is judged in judge-travel. */
export function judgeStops(study: Judged): Finding[] {
  if (!study.car.strap && !study.car.bumpStop) return [];
  const { strap, bumpStop, wish } = studyStops(study);
  const findings: Finding[] = [];
  const isAssumed = (path: string): boolean => study.car.assumed.some((each) => each.path.startsWith(path));
  const snatch = strap?.snatch;
  if (strap?.margin && strap.margin > 0 && snatch?.margin && snatch.margin < -SAME && strap.hardLimit) {
    findings.push({
      code: "strap-stretches-past",
      gravity: isAssumed("strap.stretch") ? "note" : "mind",
      place: "strap.length",
      travel: snatch.travel,
      source: isAssumed("strap.stretch") ? PRACTICE : "your document and the solved motion",
      values: {
        stretch: length(snatch.stretch),
        past: length(-snatch.margin),
        limit: strap.hardLimit.label,
        force: force(snatch.force),
        shorter: length(-snatch.margin * Math.abs(strap.taut?.ratio ?? 1)),
      },
    });
  }
  if (strap?.taut && strap.taut.offPath > wish.strapAcross + SLACK) {
    findings.push({
      code: "strap-across",
      gravity: "note",
      place: "strap.upper",
      travel: strap.taut.travel,
      source: "from memory",
      values: { angle: angle(strap.taut.offPath), most: angle(wish.strapAcross) },
    });
  }
  const touched = bumpStop?.touched;
  if (bumpStop && touched && touched.offPath > wish.offSquare + SLACK) {
    findings.push({
      code: "bump-stop-off-square",
      gravity: "mind",
      place: "bumpStop.base",
      travel: touched.travel,
      source: PRACTICE,
      values: { angle: angle(touched.offPath), most: angle(wish.offSquare), travel: length(touched.travel) },
    });
  }
  const drop = bumpStop?.drop;
  if (drop && drop.left > 0) {
    findings.push({
      code: "bump-stop-overrun",
      gravity: isAssumed("bumpStop") ? "note" : "mind",
      place: "bumpStop",
      travel: drop.travel,
      source: PRACTICE,
      values: {
        height: length(wish.dropHeight),
        most: length(drop.mostHeight),
        left: energy(drop.left),
        takes: energy(bumpStop.takes.energy),
      },
    });
  }
  return findings;
}

const force = (value: number): FindingValue => ({ value, dimension: "force" });
const energy = (value: number): FindingValue => ({ value, dimension: "energy" });
/** Less than this, m, is not worth a word. */
const SAME = 0.0254 / 32;
/** Half of the last digit shown of an angle, rad. */
const SLACK = 0.001;
