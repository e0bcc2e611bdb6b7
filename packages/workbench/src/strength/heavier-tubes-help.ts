import {
  formatTube,
  type PartCheck,
  type StrengthStudy,
  type TubeAlternative,
  type UnitSystem,
} from "@armwright/engine";
import { threeFigures } from "../words/three-figures.ts";
import { massChange } from "./tube-words.ts";

/** What heavier tubes of the arm would bring, in words; null where the check is not of an arm's tubes, or none of them helps. */
export function heavierTubesHelp(check: PartCheck, found: StrengthStudy, units: UnitSystem): string | null {
  if (check.check !== "tube-at-weld") return null;
  const arm = found.arms.find(({ checks }) => checks.includes(check));
  if (!arm || arm.checks[0] !== check) return null;
  const all = found.alternatives.filter((each) => each.arm === arm.frame.arm);
  const present = all.find(({ isPresent }) => isPresent);
  const better = present && bestHeavier(all, present);
  if (!present || !better || better.factor === null || better.factor <= (present.factor ?? 0)) return null;
  return `Tubes of ${formatTube(better.size, units)}: ${massChange(better.mass - present.mass, units)}, weakest factor then ${threeFigures(better.factor)}.`;
}

/** The heavier one that brings most. */
const bestHeavier = (all: readonly TubeAlternative[], present: TubeAlternative): TubeAlternative | null =>
  all
    .filter(({ mass }) => mass > present.mass)
    .reduce<TubeAlternative | null>(
      (best, each) => (best === null || (each.factor ?? 0) > (best.factor ?? 0) ? each : best),
      null,
    );
