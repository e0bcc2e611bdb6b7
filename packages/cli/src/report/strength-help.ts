import {
  type ArmCheck,
  type ArmFrame,
  type ArmProposal,
  formatNumber,
  formatTube,
  formatValue,
  LEAST_FACTOR,
  type StrengthStudy,
  type UnitSystem,
} from "@armwright/engine";
import type { Page } from "../text/page.ts";
import { hang } from "../text/wrap.ts";
import { massWords } from "./mass-words.ts";

/** Ways of making an arm hold, as `--by` takes them. */
export const WAYS = ["next-size", "gusset", "second-tube"] as const satisfies readonly ArmProposal["kind"][];

/** What of an arm is to be changed, in words. */
export function wayWords({ arm, change }: ArmProposal, units: UnitSystem): string {
  const { main, cross, under, gusset } = change;
  const length = (value: number): string => formatValue(value, "length", units);
  const parts = [
    main && `own tubes ${formatTube(main, units)}`,
    cross && `cross tubes ${formatTube(cross, units)}`,
    under && `second tube ${formatTube(under, units)}, ${length(under.drop)} below`,
    gusset &&
      `a plate ${length(gusset.thickness)} thick and ${length(gusset.depth)} deep on edge under the tube, ${length(gusset.reach)} either way of the mount`,
  ].filter((each) => each !== undefined);
  return `${arm.replace("-", " ")}, ${parts.join(", ")}`;
}

/** What was reckoned to make a weak arm hold, lightest first; then of each other way how far it comes. */
export function helpLines({ arms, proposals, tried }: StrengthStudy, page: Page): readonly string[] {
  const isWeak = ({ checks }: ArmCheck): boolean =>
    checks.some(({ factor }) => factor !== null && factor < LEAST_FACTOR);
  const without = arms.filter((each) => isWeak(each) && !proposals.some(({ arm }) => arm === each.frame.arm));
  return [
    ...proposals.flatMap((each) =>
      hang(
        "- ",
        `${wayWords(each, page.units)}: ${factorWords(each)}, ${massWords(each.added, page.units)} more (--by ${each.kind}).`,
        page.width,
      ),
    ),
    ...without.flatMap(({ frame }) => hang("", nothingWords(frame), page.width)),
    ...(tried.length > 0 ? hang("", "Tried, and not enough:", page.width) : []),
    ...tried.flatMap((each) => hang("- ", `${wayWords(each, page.units)}: ${factorWords(each)}.`, page.width)),
  ];
}

const nothingWords = ({ arm, isAssumed }: ArmFrame): string =>
  isAssumed
    ? `Nothing was found that makes the ${arm.replace("-", " ")} hold. Bring shock and stop nearer to the wheel or between both tubes, or soften the landing.`
    : `The ${arm.replace("-", " ")} is your own frame: change its tubes under "strength", "frames".`;

const factorWords = ({ weakest: least }: ArmProposal): string =>
  least.factor === null
    ? "its tubes are then hardly loaded"
    : `weakest factor then ${formatNumber(least.factor, 2)} (${least.label} ${least.where}, ${least.loadCase})`;
