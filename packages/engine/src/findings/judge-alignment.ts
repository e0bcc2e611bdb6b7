import { solveAt } from "../cycle/corner.ts";
import { rowAt } from "../cycle/cycle.ts";
import { ROW } from "../cycle/row.ts";
import { extremesOf } from "./extremes.ts";
import { angle, count, type Finding, length } from "./finding.ts";
import type { Judged } from "./judge.ts";

/** Change of toe over the middle two thirds of the travel, at the tyre's height front and rear, m: 1/16 in, common practice. */
const TOE_CHANGE = 0.0254 / 16;

/** More than this past a figure, m, or it reads the same on a tape: 1/64 in. */
const READABLE = 0.0254 / 64;

export function judgeAlignment(study: Judged): Finding[] {
  return [...toeFindings(study), ...camberFindings(study), ...rodEndFindings(study)];
}

function toeFindings(study: Judged): Finding[] {
  const { cycle, car } = study;
  const ride = solveAt(study.corner, 0);
  const last = cycle.travels.length - 1;
  if (!ride || last < 2) return [];
  const diameter = 2 * car.wheel.freeRadius;
  const toe = ride.row[ROW.toe]!;
  const findings: Finding[] = [];
  if (toe < -1e-4) {
    findings.push({
      code: "toe-at-ride",
      gravity: "mind",
      place: "wheel.toe",
      travel: 0,
      source: "common practice: 0 to slight toe-in at the rear",
      values: { toe: angle(-toe), rim: length(-Math.sin(toe) * diameter, 32) },
    });
  }
  const low = cycle.travels[0]!;
  const high = cycle.travels[last]!;
  let worst = 0;
  let worstAt = 0;
  for (let i = 0; i <= last; i += 1) {
    const travel = cycle.travels[i]!;
    if (travel < (2 / 3) * low || travel > (2 / 3) * high) continue;
    const change = rowAt(cycle, i)[ROW.toe]! - toe;
    if (Math.abs(change) > Math.abs(worst)) {
      worst = change;
      worstAt = travel;
    }
  }
  const atTyre = Math.abs(Math.sin(worst)) * diameter;
  if (atTyre > TOE_CHANGE + READABLE) {
    findings.push({
      code: "toe-change",
      gravity: "mind",
      place: "linkage",
      travel: worstAt,
      source: "common practice, over the middle two thirds of the travel",
      values: {
        kind: car.linkage.kind,
        change: angle(Math.abs(worst)),
        atTyre: length(atTyre, 32),
        way: worst > 0 ? "in" : "out",
        travel: length(worstAt),
        most: length(TOE_CHANGE),
      },
    });
  }
  return findings;
}

function camberFindings({ car, cycle }: Judged): Finding[] {
  const range = extremesOf(cycle, ROW.camber);
  if (!range || range.most === range.least) return [];
  return [
    {
      code: "camber-range",
      gravity: "note",
      place: "linkage",
      source: "solved motion",
      values: {
        kind: car.linkage.kind,
        least: angle(range.least),
        leastAt: length(range.leastAt),
        most: angle(range.most),
        mostAt: length(range.mostAt),
        change: angle(range.most - range.least),
      },
    },
  ];
}

function rodEndFindings({ car, cycle, corner }: Judged): Finding[] {
  const unknown = car.rodEnds
    .map((end, index) => ({ end, range: extremesOf(cycle, ROW.rodEnds + index) }))
    .filter(({ end }) => end.misalignmentLimit === undefined);
  const worst = unknown.reduce<(typeof unknown)[number] | null>(
    (best, one) => (!best || (one.range?.most ?? 0) > (best.range?.most ?? 0) ? one : best),
    null,
  );
  if (!worst?.range) return [];
  const label = corner.pivots.find(({ id }) => id === worst.end.pivot)?.label ?? worst.end.pivot;
  return [
    {
      code: "rod-end-limits-unknown",
      gravity: "note",
      place: `rodEnds["${worst.end.pivot}"]`,
      travel: worst.range.mostAt,
      source: "your document",
      values: {
        count: count(unknown.length),
        where: label,
        tilt: angle(worst.range.most),
        travel: length(worst.range.mostAt),
      },
    },
  ];
}
