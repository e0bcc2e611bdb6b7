import type { LinkageKindName, UnitSystem } from "../car/car.ts";
import { type CarDocument, FORMAT_VERSION } from "./schema.ts";
import { STARTING_LINKAGES } from "./start/linkages.ts";
import { STARTING_STOPS, startingDriveshaft, startingWheel } from "./start/parts.ts";
import { startingRodEnds } from "./start/rod-ends.ts";
import { type Typist, typist } from "./start/typed.ts";

/** An invented car of the kind, whole enough to study at once, for a builder to put their own numbers over. */
export function startingDocument(kind: LinkageKindName, system: UnitSystem): CarDocument {
  const t = typist(system);
  const { size, at } = t;
  const linkage = STARTING_LINKAGES[kind](t);
  return {
    ...heading(kind, t),
    wheel: startingWheel(t),
    linkage,
    rodEnds: startingRodEnds(t, linkage),
    driveshaft: startingDriveshaft(t, kind === "h-arm" ? "u-joint" : "constant-velocity"),
    ...STARTING_STOPS[kind](t),
    underbody: [{ name: "belly rail", ...at(12, 9, 10.5) }],
    keepOuts: [
      { shape: "tube", name: "rear upright", from: at(-12, 12, 10.5), to: at(-12, 12, 40), diameter: size(1.5) },
      { shape: "half-space", name: "firewall", point: at(26, 0, 20), normal: "rearward" },
    ],
    weights: system === "metric" ? { corner: 280, unsprung: 60 } : { corner: 620, unsprung: 130 },
    targets: {
      bump: size(7),
      droop: size(6),
      clearanceAtFullBump: size(3),
      trackWidth: size(72.25),
      wheelbase: size(104),
    },
  };
}

/** The same car with nothing in it that may be left out. */
export function simplestDocument(kind: LinkageKindName, system: UnitSystem): CarDocument {
  const t = typist(system);
  const { hubFace, freeRadius, sectionWidth, rimDiameter, rimWidth } = startingWheel(t);
  return {
    ...heading(kind, t),
    wheel: { hubFace, freeRadius, sectionWidth, rimDiameter, rimWidth },
    linkage: STARTING_LINKAGES[kind](t),
  };
}

const heading = (kind: LinkageKindName, { system }: Typist) => ({
  armwright: FORMAT_VERSION,
  name: `New ${kind} car`,
  units: system,
  datum: "middle of the gearbox outputs, plumbed down to the frame rail",
});
