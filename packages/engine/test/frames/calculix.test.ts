import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Frame } from "../../src/frames/frame.ts";
import type { SectionProperties } from "../../src/frames/section.ts";
import { length, subtract, type Vec3, vec } from "../../src/geometry/vec3.ts";
import { clamp, movementOf, nodes, solved } from "./support.ts";

// Made by reference/frames/rebuild.sh. CalculiX makes solid bricks of the beams: a square section whose Poisson's ratio
// is nothing then has shear area = area and a torsion constant Iy + Iz, its corners being kept from warping.
type Triple = readonly [number, number, number];
interface Given {
  readonly name: string;
  readonly nodes: Readonly<Record<string, Triple>>;
  readonly members: readonly (readonly [string, string, number])[];
  readonly clamps: readonly string[];
  readonly loads: Readonly<Record<string, Triple>>;
}
const read = (name: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../../../reference/frames/${name}`, import.meta.url), "utf8"));
const given = read("frames.json") as { readonly young: number; readonly frames: readonly Given[] };
const calculix = read("calculix.json") as {
  readonly frames: readonly { readonly name: string; readonly movements: Readonly<Record<string, Triple>> }[];
};

const square = (side: number): SectionProperties => ({
  area: side ** 2,
  iy: side ** 4 / 12,
  iz: side ** 4 / 12,
  torsion: side ** 4 / 6,
  shearAreaY: side ** 2,
  shearAreaZ: side ** 2,
});

/** Of the frame's greatest movement; measured: see reference/frames/README.md. */
const TOLERANCE = 5e-6;

describe("frames solved by CalculiX", () => {
  it.each(given.frames.map((frame, index) => [frame.name, frame, calculix.frames[index]!] as const))(
    "%s",
    (_, { nodes: at, members, clamps, loads }, expected) => {
      const frame: Frame = {
        nodes: nodes(at),
        members: members.map(([from, to, side]) => ({
          id: `${from}-${to}`,
          from,
          to,
          section: square(side),
          stiffness: { young: given.young, shear: given.young / 2 },
        })),
        supports: clamps.map(clamp),
      };
      const result = solved(
        frame,
        Object.entries(loads).map(([node, force]) => ({ node, force: vec(...force) })),
      );
      const theirs = Object.entries(expected.movements).map(([id, shift]) => [id, vec(...shift)] as const);
      const largest = Math.max(...theirs.map(([, shift]) => length(shift)));
      const errors = theirs.map(([id, shift]: readonly [string, Vec3]) =>
        length(subtract(movementOf(result, id).shift, shift)),
      );
      expect(Math.max(...errors) / largest).toBeLessThan(TOLERANCE);
    },
  );
});
