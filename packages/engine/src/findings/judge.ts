import type { Study } from "../study/study.ts";
import { count, type Finding } from "./finding.ts";
import { judgeAlignment } from "./judge-alignment.ts";
import { judgeCertainty, nearLimits } from "./judge-certainty.ts";
import { judgeDriveline } from "./judge-driveline.ts";
import { judgeShock } from "./judge-shock.ts";
import { judgeSprings } from "./judge-springs.ts";
import { judgeStops } from "./judge-stops.ts";
import { judgeStrength } from "./judge-strength.ts";
import { judgeSurvey } from "./judge-survey.ts";
import { judgeTravel } from "./judge-travel.ts";

/** What judgements are made from: the study but for its findings and what they do not need. */
export type Judged = Omit<Study, "findings" | "axle" | "adjusters" | "certainty">;

/** While the hand moves something, what takes milliseconds to judge waits until it rests. */
export type JudgedWhile = "resting" | "moving";

/** Every judgement on a study, worst first, each kind in the order of the builder's work. */
export function judge(study: Judged, hand: JudgedWhile): readonly Finding[] {
  const near = hand === "resting" ? nearLimits(study) : [];
  const findings = [
    ...judgeSurvey(study),
    ...judgeTravel(study, near),
    ...judgeCertainty(study, near),
    ...judgeDriveline(study),
    ...judgeShock(study),
    ...judgeSprings(study),
    ...(hand === "resting" ? judgeStops(study) : []),
    ...judgeAlignment(study),
    ...(hand === "resting" ? judgeStrength(study) : []),
    ...judgeInputs(study),
  ];
  return findings
    .map((finding, order) => ({ finding, order }))
    .sort((a, b) => WEIGHT[a.finding.gravity] - WEIGHT[b.finding.gravity] || a.order - b.order)
    .map(({ finding }) => finding);
}

const WEIGHT = { must: 0, mind: 1, note: 2 } as const;

function judgeInputs({ car }: Judged): Finding[] {
  const findings: Finding[] = [];
  if (car.assumed.length > 0) {
    findings.push({
      code: "assumed-values",
      gravity: "note",
      place: car.assumed[0]!.path,
      source: "your document",
      values: { count: count(car.assumed.length) },
    });
  }
  findings.push({
    code: "cycle-before-welding",
    gravity: "note",
    place: "",
    source: "common practice",
    values: {},
  });
  return findings;
}
