import { boltBending, boltShearLimit, boltStrength } from "./bolt.ts";
import type { StrengthEntry, TabEntry } from "./entry.ts";
import { BREAKING_TO_LIMIT, SHEAR_OF_ULTIMATE } from "./material.ts";
import { type Load, type PartCheck, worstOf } from "./part-check.ts";
import type { PartForces } from "./part-forces.ts";
import { placeWords } from "./places.ts";
import { rodEndUse, shankUse } from "./rod-end.ts";
import { BEARING_OF_YIELD, tabSideBending, tabStress } from "./tab.ts";
import { filletAllowable, THROAT_OF_LEG } from "./weld.ts";

/** What is bolted together at one place, and how far from the ball's middle its shank leaves the head. */
export interface BoltedPlace {
  readonly place: string;
  readonly label: string;
  readonly headRadius: number;
  readonly isPivot: boolean;
}

/** Rod end, bolt, tabs and their welds of one place, as far as the document gives them. */
export function checkPlace(
  entry: StrengthEntry,
  place: BoltedPlace,
  cases: readonly PartForces[],
): readonly PartCheck[] {
  const of = <Item>(items: Readonly<Record<string, Item>>): Item | undefined => items[place.place] ?? items["all"];
  const part = place.place;
  const label = place.isPivot ? place.label : placeWords(part).replace(/^the /, "");
  const loads = (size: (forces: PartForces) => number): readonly Load[] =>
    cases.map((each) => ({ loadCase: each.name, travel: each.travel, demand: size(each) }));
  const across = (each: PartForces): number => each.rodEnds[part]?.across ?? each.mounts[part] ?? 0;
  const along = (each: PartForces): number => each.rodEnds[part]?.along ?? 0;
  const checks: PartCheck[] = [];

  const rodEnd = entry.rodEnds[part];
  if (place.isPivot && rodEnd?.rating) {
    const { rating, thread, exposed } = rodEnd;
    checks.push(
      worstOf(
        {
          part,
          label: `rod end, ${label}`,
          check: "rod-end",
          allowable: 1,
          dimension: "percent",
          basis: "0.8 of the quoted rating (common practice), pull and side force added",
        },
        loads((each) => rodEndUse(rating, across(each), along(each))),
      ),
    );
    if (thread) {
      const lever = place.headRadius + exposed;
      checks.push(
        worstOf(
          {
            part,
            label: `shank, ${label}`,
            check: "rod-end-shank",
            allowable: 1,
            dimension: "percent",
            basis:
              "the strength that its rating implies at the thread's root, taken as 0.8 of it; shank along the tube",
          },
          loads((each) =>
            shankUse(thread, rating, each.rodEnds[part]?.pull ?? 0, each.rodEnds[part]?.side ?? 0, lever),
          ),
        ),
      );
    }
  }

  const bolt = of(entry.bolts);
  if (bolt) {
    const { diameter } = bolt.thread;
    checks.push(
      worstOf(
        {
          part,
          label: `bolt, ${label}`,
          check: "bolt-shear",
          allowable: boltShearLimit(bolt.grade, diameter, bolt.shear === "double" ? 2 : 1),
          dimension: "force",
          basis: `0.6 of the tensile strength of grade ${bolt.grade} (${boltStrength(bolt.grade, diameter).source}) ÷ 1.5, ${bolt.shear} shear, no thread in the shear plane`,
        },
        loads(across),
      ),
    );
    if (bolt.shear === "single") {
      checks.push(
        worstOf(
          {
            part,
            label: `bolt, ${label}`,
            check: "bolt-bending",
            allowable: boltStrength(bolt.grade, diameter).proof,
            dimension: "stress",
            basis: "proof stress; the force one bolt diameter off the tab's face (assumed)",
          },
          loads((each) => boltBending(diameter, across(each), diameter)),
        ),
      );
    }
  }

  const tab = of(entry.tabs);
  if (tab) checks.push(...checkTab(tab, bolt?.thread.diameter, part, label, loads, across, along));
  const weld = of(entry.welds);
  if (weld) {
    // Runs of equal length along both sides of each tab; a pull along them also bends the tab's foot.
    const run = tab ? weld.length / (2 * tab.count) : 0;
    const lever = tab && run > 0 ? (6 * tab.height) / run : 0;
    checks.push(
      worstOf(
        {
          part,
          label: `weld, ${label}`,
          check: "tab-weld",
          allowable: filletAllowable(weld.filler),
          dimension: "stress",
          basis: "0.30 of the filler's strength on the throat (AWS D1.1), a sound weld",
        },
        loads(
          (each) =>
            (Math.hypot(across(each), along(each)) / (weld.length * THROAT_OF_LEG * weld.leg)) * Math.hypot(1, lever),
        ),
      ),
    );
  }
  return checks;
}

function checkTab(
  tab: TabEntry,
  hole: number | undefined,
  part: string,
  label: string,
  loads: (size: (forces: PartForces) => number) => readonly Load[],
  across: (forces: PartForces) => number,
  along: (forces: PartForces) => number,
): readonly PartCheck[] {
  const { material } = tab;
  const fixed = { part, label: `tab, ${label}`, dimension: "stress" as const };
  const side = worstOf(
    { ...fixed, check: "tab-side", allowable: material.yield, basis: `yield of ${material.name}, bent at its foot` },
    loads((each) => tabSideBending({ ...tab, hole: 0 }, along(each), tab.height)),
  );
  // Without the bolt's size the hole is not known.
  if (hole === undefined) return [side];
  const stress = (each: PartForces) => tabStress({ ...tab, hole }, across(each));
  return [
    worstOf(
      {
        ...fixed,
        check: "tab-bearing",
        allowable: BEARING_OF_YIELD * material.yield,
        basis: `1.5 of the yield of ${material.name}, on the bolt's hole`,
      },
      loads((each) => stress(each).bearing),
    ),
    worstOf(
      {
        ...fixed,
        check: "tab-tear-out",
        allowable: (SHEAR_OF_ULTIMATE * material.ultimate) / BREAKING_TO_LIMIT,
        basis: `0.6 of the breaking strength of ${material.name} ÷ 1.5, out to the edge`,
      },
      loads((each) => stress(each).tearOut),
    ),
    worstOf(
      { ...fixed, check: "tab-net", allowable: material.yield, basis: `yield of ${material.name}, beside the hole` },
      loads((each) => stress(each).net),
    ),
    side,
  ];
}
