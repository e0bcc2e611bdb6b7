import {
  type CaseForces,
  type CaseGround,
  formatNumber,
  sayCaseNote,
  sayNoBalance,
  sayStrut,
  unitOf,
} from "@armwright/engine";
import { type Page, section } from "../text/page.ts";
import { bare, markTravel } from "../text/say.ts";
import { table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";

/** All cases at a glance, the most that each joint and link has to take, and what to mind. */
export function loadsLines(ground: CaseGround, cases: readonly CaseForces[], page: Page): readonly string[] {
  return [
    ...section(page, "Load cases", caseTable(ground, cases, page)),
    ...section(page, "Most at each joint", jointTable(cases, page)),
    ...section(page, "Links", linkTable(cases, page)),
    ...section(page, "Cases to mind", noteLines(cases, page)),
    ...section(page, "What these numbers are not", cautionLines(page)),
  ];
}

/** Force of the part that holds the wheel; null where there is no balance. */
const carriedBy = ({ balance, held }: CaseForces): number | null =>
  balance.ok ? (balance.forces.struts.find(({ name }) => name === held.carrier)?.magnitude ?? null) : null;

function caseTable({ staticLoad }: CaseGround, cases: readonly CaseForces[], page: Page): readonly string[] {
  const { units } = page;
  const g = (value: number) => (value === 0 ? "" : formatNumber(value, 2, true));
  return [
    ...hang(
      "",
      `One rear wheel on the scale: ${bare(staticLoad, "force", units)} ${unitOf("force", units)}, which is 1 g. Factors: common practice, yours to change under "loads" in the document (* changed there).`,
      page.width,
    ),
    ...table(
      [
        { head: ["", "case"], align: "left", gives: true },
        { head: ["travel", unitOf("length", units)], align: "mark" },
        { head: ["up", "g"], align: "right" },
        { head: ["inward", "g"], align: "right" },
        { head: ["forward", "g"], align: "right" },
        { head: ["", "wheel"], align: "left" },
        { head: ["", "held by"], align: "left" },
        { head: ["its force", unitOf("force", units)], align: "right" },
      ],
      cases.map((each) => {
        const { loadCase, held } = each;
        const isOwn = loadCase.from === "the document";
        const mark = loadCase.of === "unsprung" ? " (g of what is unsprung)" : "";
        return {
          cells: [
            `${loadCase.name}${mark}${isOwn ? " *" : ""}`,
            markTravel(held.travel, units),
            g(loadCase.vertical),
            g(loadCase.inward),
            g(forwardShown(each, staticLoad)),
            TURNING[loadCase.turning],
            sayStrut(held.carrier),
            bare(carriedBy(each), "force", units),
          ],
        };
      }),
      page.width,
    ),
  ];
}

const TURNING = { rolling: "rolls", brake: "braked", shaft: "driven" } as const;

/** What of the forward factor is left after grip and engine. */
const forwardShown = ({ held, loadCase }: CaseForces, staticLoad: number): number =>
  loadCase.of === "corner" ? (held.load.contact.x + held.load.centre.x) / staticLoad : loadCase.forward;

const size = (v: { readonly x: number; readonly y: number; readonly z: number }): number => Math.hypot(v.x, v.y, v.z);

function jointTable(cases: readonly CaseForces[], page: Page): readonly string[] {
  const { units } = page;
  const most = new Map<
    string,
    { readonly label: string; readonly force: number; readonly along: number; readonly by: string }
  >();
  for (const { balance, loadCase } of cases) {
    if (!balance.ok) continue;
    for (const joint of balance.forces.joints) {
      const force = size(joint.worst);
      if (force > (most.get(joint.pivot)?.force ?? -1)) {
        most.set(joint.pivot, { label: joint.label, force, along: Math.abs(joint.undecided), by: loadCase.name });
      }
    }
  }
  if (most.size === 0) return ["No case has a balance."];
  const force = unitOf("force", units);
  const isShared = [...most.values()].some(({ along }) => along > 0.5);
  return [
    ...table(
      [
        { head: ["", "joint"], align: "left" },
        { head: ["force", force], align: "right" },
        { head: ["of it along the hinge", force], align: "right" },
        { head: ["", "in case"], align: "left", gives: true },
      ],
      [...most.values()]
        .sort((a, b) => b.force - a.force)
        .map(({ label, force: f, along, by }) => ({
          cells: [label, bare(f, "force", units), along > 0.5 ? bare(along, "force", units) : "", by],
        })),
      page.width,
    ),
    ...(isShared
      ? hang(
          "",
          "Two rod ends on one hinge line: which of them takes the force along the line, statics cannot tell; it is from none of it to all. Here each is given all.",
          page.width,
        )
      : []),
  ];
}

function linkTable(cases: readonly CaseForces[], page: Page): readonly string[] {
  const links = new Map<
    string,
    { readonly label: string; pull: number; pullBy: string; push: number; pushBy: string }
  >();
  for (const { balance, loadCase } of cases) {
    if (!balance.ok) continue;
    for (const { member, label, tension } of balance.forces.links) {
      const link = links.get(member) ?? { label, pull: 0, pullBy: "", push: 0, pushBy: "" };
      if (tension > link.pull) Object.assign(link, { pull: tension, pullBy: loadCase.name });
      if (-tension > link.push) Object.assign(link, { push: -tension, pushBy: loadCase.name });
      links.set(member, link);
    }
  }
  if (links.size === 0) return [];
  const { units } = page;
  const force = unitOf("force", units);
  return table(
    [
      { head: ["", "link"], align: "left" },
      { head: ["pulled", force], align: "right" },
      { head: ["", "in case"], align: "left", gives: true },
      { head: ["pushed", force], align: "right" },
      { head: ["", "in case"], align: "left", gives: true },
    ],
    [...links.values()].map(({ label, pull, pullBy, push, pushBy }) => ({
      cells: [
        label,
        pull > 0 ? bare(pull, "force", units) : "",
        pullBy,
        push > 0 ? bare(push, "force", units) : "",
        pushBy,
      ],
    })),
    page.width,
  );
}

function noteLines(cases: readonly CaseForces[], page: Page): readonly string[] {
  // The same remark on several cases is told once.
  const told = new Map<string, string[]>();
  for (const { loadCase, balance, notes } of cases) {
    const remarks = [
      ...notes.map((note) => sayCaseNote(note, page.units)),
      ...(balance.ok ? [] : [sayNoBalance(balance)]),
    ];
    for (const remark of remarks) told.set(remark, [...(told.get(remark) ?? []), loadCase.name]);
  }
  return [...told].flatMap(([remark, names]) => hang("- ", `${names.join(", ")}: ${remark}.`, page.width));
}

export const cautionLines = (page: Page): readonly string[] =>
  [
    "A force here is as good as its case. Real blows can be harder: run a landing (npx armwright land) and look at its peaks.",
    "Reckoned with stiff, weightless arms and joints without friction. Wheel, hub and spindle are not taken off: their weight makes the real forces on the arms a little smaller.",
    "This is no proof of strength. Rule books and the law of the road come first; a licensed engineer decides.",
  ].flatMap((text) => hang("- ", text, page.width));
