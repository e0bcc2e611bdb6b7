import { type BentArm, bentArm, percent, useClassOf } from "@armwright/drawing";
import { type ArmCheck, type ArmId, type Car, type Position, placeOn, type StrengthStudy } from "@armwright/engine";
import { formatPath } from "@armwright/engine/document";
import type { FramePictureInSpace } from "../scene/parts/arm-frame.ts";
import type { SceneGrip } from "../scene/types.ts";

/** The arm with the weakest tube, or the first. */
export const weakestArm = ({ arms }: StrengthStudy): ArmCheck | undefined =>
  arms.reduce<ArmCheck | undefined>(
    (worst, each) => (factorOf(each) < (worst ? factorOf(worst) : Number.POSITIVE_INFINITY) ? each : worst),
    arms[0],
  );

const factorOf = ({ checks }: ArmCheck): number =>
  checks.reduce((least, { factor }) => Math.min(least, factor ?? Number.POSITIVE_INFINITY), Number.POSITIVE_INFINITY);

/** The case that is looked at: the chosen one, or that of the arm's weakest place. */
export const caseOf = (arm: ArmCheck, chosen: string | null): string | null => {
  const all = arm.analysis.ok ? arm.analysis.cases : [];
  if (chosen !== null && all.some(({ loadCase }) => loadCase === chosen)) return chosen;
  return arm.checks.find(({ loadCase }) => loadCase !== null)?.loadCase ?? all[0]?.loadCase ?? null;
};

export const bentNow = (arm: ArmCheck, chosen: string | null): BentArm | null => {
  const loadCase = caseOf(arm, chosen);
  return loadCase === null ? null : bentArm(arm, loadCase);
};

/** Numbers of no more nodes stand in space: the rest is told in the sheet's picture. */
const MOST_NUMBERS = 6;

/** Every arm that was analysed, carried to where it is now. */
export function armsInSpace(found: StrengthStudy, chosen: string | null, position: Position): FramePictureInSpace {
  const all = found.arms.flatMap((arm) => {
    const bent = bentNow(arm, chosen);
    return bent ? [{ bent, body: arm.frame.arm }] : [];
  });
  return {
    pieces: all.flatMap(({ bent, body }) =>
      bent.pieces.map(({ from, to, bent: curve, use }) => ({
        at: [placeOn(position, from, body), placeOn(position, to, body)] as const,
        bent: curve.map((point) => placeOn(position, point, body)),
        use: useClassOf(use),
      })),
    ),
    numbers: all
      .flatMap(({ bent, body }) => bent.nodes.map((node) => ({ ...node, at: placeOn(position, node.at, body) })))
      .filter(({ use }) => use > 0)
      .sort((a, b) => b.use - a.use)
      .slice(0, MOST_NUMBERS)
      .map(({ at, use }) => ({ at, text: `${percent(use)} %` })),
  };
}

/** Nodes that the builder drew and that are neither pivot nor mount: they are dragged in space like every point of the car. */
export const frameGrips = ({ strength }: Pick<Car, "strength">): readonly SceneGrip[] =>
  Object.entries(strength?.frames ?? {}).flatMap(([arm, frame]) =>
    frame.nodes.flatMap(({ name, point, at }, index): SceneGrip[] =>
      at === undefined
        ? [
            {
              path: formatPath(["strength", "frames", arm, "nodes", index, "point"]),
              label: name,
              point,
              on: arm as ArmId,
            },
          ]
        : [],
    ),
  );
