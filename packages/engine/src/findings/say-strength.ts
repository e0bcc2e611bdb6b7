import type { LoadCase } from "../loads/load-case.ts";
import type { CheckCode, PartCheck } from "../strength/part-check.ts";
import { sayCaseLoad } from "./say-loads.ts";

const CHECK_WORDS: Readonly<Record<CheckCode, string>> = {
  "tube-at-weld": "bending and pull, beside its weld",
  "link-pushed": "pushed, buckling",
  "link-pulled": "pulled",
  "rod-end": "rod end's rating",
  "rod-end-shank": "bending in the rod end's shank: bad practice",
  "bolt-shear": "bolt in shear",
  "bolt-bending": "bolt bending between tabs",
  "tab-bearing": "tab, hole bearing",
  "tab-tear-out": "tab, tearing out",
  "tab-net": "tab, beside the hole",
  "tab-side": "tab bent sideways",
  "tab-weld": "weld of the tab",
  "shaft-torsion": "twist",
  "shaft-joint": "joint's rating",
  "stub-bending": "bending at the outer bearing",
};

const HELP: Readonly<Record<CheckCode, string>> = {
  "tube-at-weld": "a deeper or thicker tube, a gusset under the mount, or the mount between both tubes",
  "link-pushed": "a larger tube, or a shorter link",
  "link-pulled": "a thicker tube",
  "rod-end": "the next rod end, or turn the bracket so that the pull is across the bolt",
  "rod-end-shank": "turn the bracket so that the pull runs along the shank",
  "bolt-shear": "double shear, the next bolt, a higher grade",
  "bolt-bending": "tabs closer to the joint, or the next bolt",
  "tab-bearing": "thicker tabs",
  "tab-tear-out": "more plate beyond the hole",
  "tab-net": "wider tabs",
  "tab-side": "a gusset across the tab, or the bracket turned",
  "tab-weld": "a longer weld or a larger leg",
  "shaft-torsion": "a larger shaft, or a stronger steel",
  "shaft-joint": "the next joint",
  "stub-bending": "a larger stub, or less offset",
};

/** What is asked of the part, in the trade's words. */
export const sayCheck = (code: CheckCode): string => CHECK_WORDS[code];

/** What would help against it, in the trade's words. */
export const sayHelp = (code: CheckCode): string => HELP[code];

/** The case that a factor holds for with its g, or that none of the cases loads the part. */
export function sayCheckCase(
  { loadCase: name }: Pick<PartCheck, "loadCase">,
  cases: readonly { readonly loadCase: LoadCase }[],
): string {
  const found = cases.find(({ loadCase }) => loadCase.name === name);
  return found ? `${found.loadCase.name}, ${sayCaseLoad(found.loadCase)}` : "not loaded by these cases";
}
