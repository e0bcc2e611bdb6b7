import { type ArmProposal, formatNumber, formatTube, formatValue, type UnitSystem } from "@armwright/engine";
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

/** What was reckoned to make a weak arm hold, lightest first. */
export const proposalLines = (proposals: readonly ArmProposal[], page: Page): readonly string[] =>
  proposals.flatMap((each) => {
    const { weakest: least, kind, added } = each;
    const factor =
      least.factor === null
        ? "its tubes are then hardly loaded"
        : `weakest factor then ${formatNumber(least.factor, 2)} (${least.label} ${least.where}, ${least.loadCase})`;
    return hang(
      "- ",
      `${wayWords(each, page.units)}: ${factor}, ${massWords(added, page.units)} more (--by ${kind}).`,
      page.width,
    );
  });
