import { type ArmAnalysis, type ArmCaseResult, analyseArm } from "./analyse-arm.ts";
import { type ArmFrame, massOf } from "./arm-frame.ts";
import { repeatsOf, WELDED_ATTACHMENT } from "./fatigue.ts";
import { isWeldKnown, welded } from "./material.ts";
import { byWeakness, type Load, type PartCheck, worstOf } from "./part-check.ts";
import type { ArmLoad, PartForces } from "./part-forces.ts";

/** An arm's tubes under all load cases. */
export interface ArmCheck {
  readonly frame: ArmFrame;
  readonly analysis: ArmAnalysis;
  /** One for each tube, weakest first. */
  readonly checks: readonly PartCheck[];
  /** kg, tubes alone. */
  readonly mass: number;
  /** The weld whose stress swings most between hanging free and a case; null where the frame could not be analysed. */
  readonly fatigue: WeldSwing | null;
}

export interface WeldSwing {
  readonly label: string;
  readonly where: string;
  readonly loadCase: string;
  /** Pa, from nothing to the case's normal stress. */
  readonly range: number;
  /** Such blows until a crack has to be reckoned with; null: without end. */
  readonly repeats: number | null;
}

const UNLOADED: ArmLoad = { forces: [], undecided: [] };

export function checkArm(frame: ArmFrame, cases: readonly PartForces[]): ArmCheck {
  const analysis = analyseArm(
    frame,
    cases.map((each) => ({ id: each.name, load: each.arms[frame.arm] ?? UNLOADED })),
  );
  const mass = massOf(frame);
  if (!analysis.ok) return { frame, analysis, checks: [], mass, fatigue: null };
  return {
    frame,
    analysis,
    mass,
    checks: tubeChecks(frame, analysis.cases, cases),
    fatigue: swingOf(analysis.cases),
  };
}

function tubeChecks(
  frame: ArmFrame,
  results: readonly ArmCaseResult[],
  cases: readonly PartForces[],
): readonly PartCheck[] {
  const labels = [...new Set(frame.members.map(({ label }) => label))];
  return labels
    .map((label) => {
      const { material, id, role } = frame.members.find((member) => member.label === label)!;
      const loads = results.flatMap((result, index): Load[] =>
        result.uses
          .filter(({ member }) => member.label === label)
          .map(({ stress, nodeLabel, at }) => ({
            loadCase: result.loadCase,
            travel: cases[index]!.travel,
            demand: stress.combined,
            where: `at ${nodeLabel}`,
            at,
          })),
      );
      const known = isWeldKnown(material) ? "" : " (not known, taken from its breaking strength)";
      return worstOf(
        {
          part: role === "own" ? id : id.replace(/ \d+$/, ""),
          label,
          check: "tube-at-weld",
          allowable: welded(material),
          dimension: "stress",
          basis: `${material.name} beside a weld that is not heat-treated${known}`,
        },
        loads,
      );
    })
    .sort(byWeakness);
}

function swingOf(results: readonly ArmCaseResult[]): WeldSwing | null {
  let most: WeldSwing | null = null;
  for (const { uses, loadCase } of results) {
    for (const { member, nodeLabel, stress } of uses) {
      const range = Math.abs(stress.normal);
      if (most && range <= most.range) continue;
      most = { label: member.label, where: nodeLabel, loadCase, range, repeats: repeatsOf(range, WELDED_ATTACHMENT) };
    }
  }
  return most;
}

/** Least factor of an arm's tubes; null where none is loaded. */
export const weakest = (checks: readonly PartCheck[]): PartCheck | null =>
  [...checks].sort(byWeakness).find(({ factor }) => factor !== null) ?? null;
