import { type Finding, formatValue, type Gravity, type Study, sayFinding } from "@armwright/engine";
import type { Page } from "../text/page.ts";
import { hang } from "../text/wrap.ts";

export const GRAVITY: Record<Gravity, string> = { must: "MUST", mind: "Mind", note: "Note" };

/** Every finding, worst first: what is, what can be done, and where it comes from. */
export const findingLines = ({ findings }: Pick<Study, "findings">, page: Page): readonly string[] =>
  findings.filter((finding) => !isEmpty(finding, page)).flatMap((finding) => oneFinding(finding, page));

/** A range of camber that reads the same at both ends tells nothing. */
function isEmpty({ code, values }: Finding, page: Page): boolean {
  const [least, most] = [values["least"], values["most"]].map((value) =>
    value === undefined || typeof value === "string"
      ? undefined
      : formatValue(value.value, value.dimension, page.units),
  );
  return code === "camber-range" && least === most;
}

function oneFinding(finding: Finding, page: Page): readonly string[] {
  const { sentence, remedy } = sayFinding(finding, page.units);
  const loud = finding.gravity === "must" ? (line: string) => page.bold(page.red(line)) : (line: string) => line;
  const place = finding.place === "" ? "" : `; ${finding.place}`;
  return [
    ...hang(`${GRAVITY[finding.gravity]}  `, sentence, page.width).map(loud),
    ...hang("      ", remedy, page.width),
    ...hang("      ", `(${finding.source}${place})`, page.width),
  ];
}
