import type { BumpStop, Strap } from "../../car/car.ts";
import type { BumpStopLaw } from "../../stops/bump-stop-law.ts";
import { rubberLaw } from "../../stops/law-of.ts";
import { USUAL_STRETCH } from "../../stops/strap-stretch.ts";
import type { BumpStopDocument, StrapDocument } from "../schema.ts";
import { STOP_FORCE_ASSUMED } from "../sections/stop-force.ts";
import type { Resolver } from "./resolver.ts";

/** How the stop pushes: as measured, its gas, or its rubber; where nothing is said the usual pad's, noted. */
export function resolveStopLaw(
  document: BumpStopDocument,
  { reach, solid }: Pick<BumpStop, "reach" | "solid">,
  r: Resolver,
): BumpStopLaw {
  const stroke = reach - solid;
  const { measured, gas, rubber } = document;
  if (measured && measured.length > 0) {
    const points = measured.map(({ squeeze, force }) => ({ at: r.length(squeeze), force: r.value(force, "force") }));
    return { kind: "table", stroke, points: points.sort((a, b) => a.at - b.at) };
  }
  const { pressure, rodDiameter, volume, rubberDiameter, hardness } = STOP_FORCE_ASSUMED;
  if (gas) {
    const at = (field: string) => ["bumpStop", "gas", field];
    const diameter = r.either(gas.rodDiameter, at("rodDiameter"), rodDiameter, undefined);
    return {
      kind: "gas",
      stroke,
      diameter,
      pressure: r.either(gas.pressure, at("pressure"), pressure, undefined),
      volume: r.either(gas.volume, at("volume"), volume, { diameter, stroke }),
    };
  }
  return rubberLaw(
    { reach, solid },
    {
      diameter: r.either(rubber?.diameter, ["bumpStop", "rubber", "diameter"], rubberDiameter, undefined),
      hardness: r.either(rubber?.hardness, ["bumpStop", "rubber", "hardness"], hardness, undefined),
    },
  );
}

export function resolveStretch({ stretch }: StrapDocument, r: Resolver): NonNullable<Strap["stretch"]> {
  if (stretch && stretch.length > 0) {
    const points = stretch.map(({ percent, force }) => ({
      at: r.value(percent, "percent"),
      force: r.value(force, "force"),
    }));
    return points.sort((a, b) => a.at - b.at);
  }
  r.note(["strap", "stretch"], "word", STOP_FORCE_ASSUMED.stretch.words, STOP_FORCE_ASSUMED.stretch.because);
  return USUAL_STRETCH;
}

export const resolveHoles = (typed: StrapDocument["holeSpacing"], r: Resolver) =>
  typed === undefined ? {} : { holeSpacing: r.length(typed) };
