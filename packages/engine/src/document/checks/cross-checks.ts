import type { UnitSystem } from "../../car/car.ts";
import type { PlacedFault } from "../structure.ts";
import { checkChassisMesh } from "./chassis-mesh.ts";
import { checkLinkage, checkRodEnds } from "./linkage.ts";
import { lookAt, type Side } from "./look.ts";
import { checkParts, checkWholeCar } from "./parts.ts";
import { checkStrength } from "./strength.ts";
import { checkSurvey } from "./survey.ts";
import { checkWheel } from "./wheel.ts";

/** Checks of fields against each other. Works on a broken document too, so that all faults show at once. */
export function crossCheck(root: unknown, system: UnitSystem): readonly PlacedFault[] {
  const look = lookAt(root, system);
  const left: Side = { look, base: [], name: "left", linkageAt: ["linkage"] };
  const rightOwn = look.value(["right", "linkage"]) !== undefined;
  const right: Side = {
    look,
    base: ["right"],
    name: "right",
    linkageAt: rightOwn ? ["right", "linkage"] : ["linkage"],
  };
  return [
    ...[left, right].flatMap((side) => [
      ...checkWheel(side),
      ...checkLinkage(side),
      ...checkRodEnds(side),
      ...checkParts(side),
    ]),
    ...checkWholeCar(look),
    ...checkChassisMesh(look),
    ...checkStrength(look),
    ...checkSurvey(look),
  ];
}
