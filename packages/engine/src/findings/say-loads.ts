import type { UnitSystem } from "../car/car.ts";
import type { CaseNote } from "../loads/case-forces.ts";
import type { NoBalance } from "../loads/corner-forces.ts";
import type { LoadCase } from "../loads/load-case.ts";
import type { StrutName } from "../loads/struts.ts";
import { formatNumber, formatValue } from "../units/format.ts";

const PARTS: Readonly<Record<StrutName, string>> = { shock: "shock", "bump-stop": "bump stop", strap: "strap" };

/** What can hold the wheel up, in words. */
export const sayStrut = (name: StrutName): string => PARTS[name];

/** What has to be known of a load case, without a full stop. */
export function sayCaseNote(note: CaseNote, units: UnitSystem): string {
  switch (note.code) {
    case "carrier-missing":
      return `the car has no ${PARTS[note.part]}: the ${PARTS[note.instead]} holds instead`;
    case "springs-not-given":
      return "no springs in the document: their share is not taken off";
    case "no-unsprung-weight":
      return "weights.unsprung is missing: a fifth of the corner is taken (common practice)";
    case "limited-by-grip":
      return `no more than grip lets through (friction ${formatNumber(note.grip, 2)})`;
    case "limited-by-engine":
      return `no more than the engine gives (${formatValue(note.torque, "torque", units)} at the wheel)`;
    case "engine-not-given":
      return "loads.engineTorque and loads.gearing are missing: only grip limits it";
    case "no-driveshaft":
      return "no driveshaft in the document: its joints' couples are left out";
    case "carrier-turned":
      return note.part === "strap"
        ? "the strap would have to push: at this travel it does not carry"
        : `the springs alone carry more than this: the ${PARTS[note.part]} would have to pull`;
  }
}

/** Why a load case has no balance, without a full stop. */
export function sayNoBalance(none: NoBalance): string {
  switch (none.reason) {
    case "out-of-range":
      return "the linkage does not reach this travel";
    case "part-missing":
      return `the document has no ${PARTS[none.part]} to hold the wheel`;
    case "singular":
      return "nothing here can hold the wheel: the linkage is in line, or the part that carries does not move";
  }
}

/** `5 g up, 0.5 g inward`; a g is one of the wheel's weight on the scale unless it says otherwise. */
export function sayCaseLoad({ vertical, inward, forward, of, isLimited }: LoadCase): string {
  const parts = [
    [vertical, "up", "down", false],
    [inward, "inward", "outward", false],
    [forward, "forward", "rearward", isLimited],
  ] as const;
  const said = parts
    .filter(([g]) => g !== 0)
    .map(
      ([g, plus, minus, isMost]) =>
        `${isMost ? "at most " : ""}${Number(formatNumber(Math.abs(g), 2))} g ${g > 0 ? plus : minus}`,
    );
  return `${said.join(", ")}${of === "corner" ? "" : " of what is unsprung"}`;
}
