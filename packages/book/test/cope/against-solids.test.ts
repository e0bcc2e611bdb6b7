import { readFileSync } from "node:fs";
import type { Vec3 } from "@armwright/engine";
import { describe, expect, test } from "vitest";
import { copeLine } from "../../src/cope/cope-line.ts";

/* Against a general solid-geometry library: reference/cope. Its rounds have flat sides. */

interface Case {
  readonly name: string;
  readonly outward: readonly number[];
  readonly seam: readonly number[];
  readonly outerRadius: number;
  readonly wall: number;
  readonly onto: readonly {
    readonly point: readonly number[];
    readonly direction: readonly number[];
    readonly radius: number;
  }[];
  readonly cuts: readonly number[];
}

const { cases }: { cases: readonly Case[] } = JSON.parse(
  readFileSync(new URL("../../../../reference/cope/cope.json", import.meta.url), "utf8"),
);

const vec = ([x, y, z]: readonly number[]): Vec3 => ({ x: x!, y: y!, z: z! });

/** A flat side lies this much inside its circle (m), and a slanting tube stretches that along its axis. */
const FLAT = 5e-6;

describe("cope lines against solids", () => {
  test.each(cases)("$name", ({ outward, seam, outerRadius, wall, onto, cuts }) => {
    const line = copeLine(
      {
        origin: { x: 0, y: 0, z: 0 },
        outward: vec(outward),
        seam: vec(seam),
        outerRadius,
        wall,
        onto: onto.map((tube) => ({ point: vec(tube.point), direction: vec(tube.direction), radius: tube.radius })),
      },
      cuts.length,
    );
    cuts.forEach((cut, index) => {
      expect(line[index]!.cut).not.toBeNull();
      expect(Math.abs(line[index]!.cut! - cut)).toBeLessThan(FLAT);
    });
  });
});
