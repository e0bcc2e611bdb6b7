import { expect, test } from "vitest";
import { memberStress } from "../../src/frames/member-stress.ts";
import { sectionProperties } from "../../src/frames/section.ts";
import { vec } from "../../src/geometry/vec3.ts";
import { clamp, solved } from "../frames/support.ts";

const INCH = 0.0254;
const PIECES = 6;

// By hand: a plate welded along a tube bends with it as one section, of which the second moment is that of both parts and of
// their areas off the common middle line (any textbook's parallel axes). Here under a constant moment.
test("a plate tied to a tube piece by piece bends with it as one section", () => {
  const tube = { shape: "round-tube", diameter: 1.5 * INCH, wall: 0.12 * INCH } as const;
  const plate = { shape: "flat-bar", width: 0.25 * INCH, depth: 1.5 * INCH } as const;
  const off = vec(0, 0, -(tube.diameter + plate.depth) / 2);
  const stiffness = { young: 200e9, shear: 77e9 };
  const at = (i: number) => `at ${i}`;
  const ids = Array.from({ length: PIECES + 1 }, (_, i) => at(i));
  const pieces = ids.slice(1).flatMap((to, i) => [
    { id: `tube ${i}`, from: at(i), to, section: tube, stiffness },
    { id: `plate ${i}`, from: at(i), to, section: plate, stiffness, offsetFrom: off, offsetTo: off },
  ]);
  const moment = 1000;
  const result = solved(
    {
      nodes: ids.map((id, i) => ({ id, point: vec(0.05 * i, 0, 0) })),
      members: pieces,
      supports: [clamp(at(0))],
    },
    [{ node: at(PIECES), moment: vec(0, moment, 0) }],
  );
  const parts = [sectionProperties(tube), sectionProperties(plate)] as const;
  const area = parts[0].area + parts[1].area;
  const middle = (parts[1].area * off.z) / area;
  const second = parts[0].iy + parts[0].area * middle ** 2 + parts[1].iy + parts[1].area * (off.z - middle) ** 2;
  const stressOf = (id: string) => {
    const member = pieces.find((each) => each.id === id)!;
    return memberStress(member, result.members.find((each) => each.member === id)!)!.from.normal;
  };
  const edge = off.z - plate.depth / 2 - middle;
  const top = tube.diameter / 2 - middle;
  expect(Math.abs(stressOf("plate 2")) / ((moment * Math.abs(edge)) / second)).toBeCloseTo(1, 6);
  expect(Math.abs(stressOf("tube 2")) / ((moment * top) / second)).toBeCloseTo(1, 6);
});
