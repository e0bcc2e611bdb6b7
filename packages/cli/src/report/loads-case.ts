import {
  type CaseForces,
  type CaseGround,
  type CornerForces,
  formatNumber,
  formatValue,
  sayCaseNote,
  sayNoBalance,
  sayStrut,
  unitOf,
} from "@armwright/engine";
import { type Page, section } from "../text/page.ts";
import { bare, markTravel } from "../text/say.ts";
import { table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";
import { cautionLines } from "./loads.ts";

interface Vector {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** One case with every force in it. */
export function caseLines(ground: CaseGround, found: CaseForces, page: Page): readonly string[] {
  const { balance, notes } = found;
  return [
    ...section(page, found.loadCase.name, loadLines(ground, found, page)),
    ...(balance.ok
      ? forceSections(balance.forces, page)
      : section(page, "No balance", hang("", `${sayNoBalance(balance)}.`, page.width))),
    ...section(
      page,
      "To mind",
      notes.flatMap((note) => hang("- ", `${sayCaseNote(note, page.units)}.`, page.width)),
    ),
    ...section(page, "What these numbers are not", cautionLines(page)),
  ];
}

const show = (value: number, dimension: Parameters<typeof formatValue>[1], { units }: Page): string =>
  formatValue(value, dimension, units);
const size = ({ x, y, z }: Vector): number => Math.hypot(x, y, z);

function sayForce(force: Vector, page: Page): string {
  const parts = [
    [force.z, "up", "down"],
    [-force.y, "inward", "outward"],
    [force.x, "forward", "rearward"],
  ] as const;
  const said = parts
    .filter(([value]) => Math.abs(value) > 0.5)
    .map(([value, plus, minus]) => `${show(Math.abs(value), "force", page)} ${value > 0 ? plus : minus}`);
  return said.length === 0 ? "nothing" : said.join(", ");
}

function loadLines({ staticLoad }: CaseGround, { loadCase, held }: CaseForces, page: Page): readonly string[] {
  const { contact, centre } = held.load;
  const wheel = { rolling: "rolls free", brake: "is braked on the spindle", shaft: "is driven through the shaft" };
  return [
    `Wheel ${markTravel(held.travel, page.units)} ${unitOf("length", page.units)} from ride height; it ${wheel[loadCase.turning]}. Held by the ${sayStrut(held.carrier)}.`,
    `On the tyre at the ground: ${sayForce(contact, page)}. At the wheel centre: ${sayForce(centre, page)}.`,
    `1 g is ${show(staticLoad, "force", page)}, what the wheel carries on the scale. Factors: ${loadCase.from}.`,
  ].flatMap((text) => hang("", text, page.width));
}

function forceSections(forces: CornerForces, page: Page): readonly string[] {
  const { units } = page;
  const force = unitOf("force", units);
  const vector = ({ x, y, z }: Vector) => [bare(x, "force", units), bare(y, "force", units), bare(z, "force", units)];
  const axes = [
    { head: ["forward", force], align: "right" as const },
    { head: ["left", force], align: "right" as const },
    { head: ["up", force], align: "right" as const },
    { head: ["size", force], align: "right" as const },
  ];
  const { shaft } = forces.action;
  return [
    ...section(page, "Joints: force on the outboard part", [
      ...table(
        [
          { head: ["", "joint"], align: "left", gives: true },
          ...axes,
          { head: ["along hinge", force], align: "right" },
        ],
        forces.joints.map((joint) => ({
          cells: [
            joint.label,
            ...vector(joint.force),
            bare(size(joint.force), "force", units),
            Math.abs(joint.undecided) > 0.5 ? `0 to ${bare(joint.undecided, "force", units)}` : "",
          ],
        })),
        page.width,
      ),
      ...(forces.joints.some(({ undecided }) => Math.abs(undecided) > 0.5)
        ? hang(
            "",
            "Along a hinge line each rod end is shown with half; alone it could have none of it or all.",
            page.width,
          )
        : []),
    ]),
    ...section(
      page,
      "Links",
      forces.links.map(
        ({ label, tension }) =>
          `${label}: ${show(Math.abs(tension), "force", page)} ${tension >= 0 ? "pulled" : "pushed"}`,
      ),
    ),
    ...section(
      page,
      "Hinges",
      forces.hinges.flatMap(({ arm, at, force: whole, moment }) =>
        hang(
          "",
          `${arm.replace("-", " ")} at the ${at}: ${show(size(whole), "force", page)}, moment ${show(size(moment), "torque", page)}`,
          page.width,
        ),
      ),
    ),
    ...section(
      page,
      "Shock, stop and strap",
      forces.struts.map(
        ({ name, magnitude, isCarrier }) =>
          `${sayStrut(name)}: ${show(Math.abs(magnitude), "force", page)} ${
            (name === "strap") === magnitude >= 0 ? "pulled" : "pushed"
          }${isCarrier ? "" : " (springs and gas as they are there)"}`,
      ),
    ),
    ...(shaft
      ? section(
          page,
          "Half shaft",
          hang(
            "",
            `Torque ${show(shaft.inShaft, "torque", page)}; joints bent ${show(shaft.innerAngle, "angle", page)} inner, ${show(shaft.outerAngle, "angle", page)} outer, which press the stub aside with ${show(shaft.secondary, "torque", page)} (at most ${show(shaft.secondaryMost, "torque", page)} in a turn). Friction of the spline is left out.`,
            page.width,
          ),
        )
      : []),
    ...hang("", `Left over in the balance: ${formatNumber(forces.residual, 6)} N.`, page.width),
  ];
}
