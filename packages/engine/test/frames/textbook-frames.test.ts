import { describe, expect, it } from "vitest";
import { type Frame, MOVEMENTS } from "../../src/frames/frame.ts";
import { vec } from "../../src/geometry/vec3.ts";
import { bare, clamp, forcesOf, members, movementOf, nodes, reactionOf, solved } from "./support.ts";

// Kips and inches are a consistent set of units too: the analysis knows none.
const KSI = { young: 30000, shear: 10000 };

const within = (got: number, expected: number, relative: number): void =>
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(Math.abs(expected) * relative);

describe("frames of the textbooks", () => {
  it("space frame of three members: Logan, A First Course in the Finite Element Method, 4th ed., Example 5.8", () => {
    const frame: Frame = {
      nodes: nodes({ a: [0, 0, 0], b: [-100, 0, 0], c: [0, 0, -100], d: [0, -100, 0] }),
      members: members(
        [
          ["b", "a"],
          ["c", "a"],
          ["d", "a"],
        ],
        { section: bare(10, 100, 100, 50), stiffness: KSI },
      ),
      supports: ["b", "c", "d"].map(clamp),
    };
    const result = solved(frame, [{ node: "a", force: vec(0, -50, 0), moment: vec(-1000, 0, 0) }]);
    const { shift, turn } = movementOf(result, "a");
    within(shift.x, 7.098e-5, 1e-3);
    within(shift.y, -0.013995, 1e-3);
    within(shift.z, -2.352e-3, 1e-3);
    within(turn.x, -3.996e-3, 1e-3);
    within(turn.y, 1.78e-5, 1e-3);
    within(turn.z, -1.0334e-4, 1e-3);
    expect(result.residual).toBeLessThan(1e-12);
  });

  it("gable frame: Logan, 4th ed., Problem 5.30", () => {
    const frame: Frame = {
      nodes: nodes({
        1: [0, 0, 0],
        2: [0, 360, 0],
        3: [180, 480, 0],
        4: [420, 480, 0],
        5: [600, 360, 0],
        6: [600, 0, 0],
      }),
      members: members(
        [
          ["1", "2"],
          ["2", "3"],
          ["3", "4"],
          ["4", "5"],
          ["5", "6"],
        ],
        { section: bare(12, 200, 200, 200), stiffness: KSI },
      ),
      supports: [
        clamp("1"),
        clamp("6"),
        ...["2", "3", "4", "5"].map((node) => ({ node, holds: ["z", "turn-x", "turn-y"] as const })),
      ],
    };
    const load = vec(0, -30, 0);
    const result = solved(frame, [
      { node: "3", force: load },
      { node: "4", force: load },
    ]);
    const base = reactionOf(result, "1");
    within(base.force.x, 11.6877, 1e-4);
    within(base.force.y, 30, 1e-4);
    within(base.moment.z, -1810.0745, 1e-4);
    within(movementOf(result, "3").shift.y, -6.666757, 1e-4);
    within(movementOf(result, "3").turn.z, -0.032, 2e-3);
  });

  it("frame with an upright member whose section is turned: Logan, 4th ed., Problem 5.58", () => {
    // The book's local axes: z of the section lies along the global vertical y of the horizontal members; for the upright
    // one it lies along global x.
    const section = bare(100, 200, 1000, 100);
    const common = { section, stiffness: KSI };
    const frame: Frame = {
      nodes: nodes({ 1: [0, 0, 0], 2: [120, 0, 0], 3: [120, 0, -120], 4: [120, -240, -120] }),
      members: [
        // iz is bending in the x-y plane of the member; its y axis is the vertical one, so its depth (z) is level.
        ...members([["1", "2"]], { ...common, depth: vec(0, 0, 1) }),
        ...members([["2", "3"]], { ...common, depth: vec(1, 0, 0) }),
        ...members([["3", "4"]], { ...common, depth: vec(0, 0, 1) }),
      ],
      supports: [clamp("1"), clamp("4")],
    };
    const result = solved(frame, [
      { node: "2", force: vec(0, -5, 0), moment: vec(-1200, 0, 0) },
      { node: "3", force: vec(0, 0, 40) },
    ]);
    within(movementOf(result, "2").shift.y, -0.062232, 1e-5);
    within(movementOf(result, "3").shift.z, 1.821762, 1e-5);
  });

  it("space truss: Bedford and Fowler, Engineering Mechanics: Statics, 4th ed., Problem 6.64", () => {
    const at = { A: [1.1, -0.4, 0], B: [1, 0, 0], C: [0, 0, 0.6], D: [0, 0, -0.4], E: [0, 0.8, 0] } as const;
    const hold = ["turn-x", "turn-y", "turn-z"] as const;
    const frame: Frame = {
      nodes: nodes(at),
      members: members(
        [
          ["A", "B"],
          ["A", "C"],
          ["A", "D"],
          ["B", "C"],
          ["B", "D"],
          ["B", "E"],
        ],
        {
          section: bare(1, 1, 1, 1),
          stiffness: KSI,
          releaseFrom: ["turn-y", "turn-z"],
          releaseTo: ["turn-x", "turn-y", "turn-z"],
        },
      ),
      supports: [{ node: "A", holds: hold }, { node: "B", holds: hold }, ...["C", "D", "E"].map(clamp)],
    };
    const result = solved(frame, [{ node: "A", force: vec(10, 60, 20) }]);
    const expected = { "A-B": -72.154, "A-C": -13.153, "A-D": 43.293, "B-C": 32.653, "B-D": 45.235, "B-E": -112.055 };
    for (const [id, force] of Object.entries(expected)) {
      expect(Math.abs(forcesOf(result, id).to.force.x - force)).toBeLessThan(0.001);
    }
  });

  it("continuous beam whose supports settle: Kassimali, Structural Analysis, Example 13.14, solved exactly", () => {
    // Three spans of 20 ft under 2 kip/ft; the load on nodes that is the same: w L / 2 and w L² / 12 at each span's ends.
    const span = 240;
    const w = 2 / 12;
    const half = (w * span) / 2;
    const end = (w * span ** 2) / 12;
    const frame: Frame = {
      nodes: nodes({ 1: [0, 0, 0], 2: [span, 0, 0], 3: [2 * span, 0, 0], 4: [3 * span, 0, 0] }),
      members: members(
        [
          ["1", "2"],
          ["2", "3"],
          ["3", "4"],
        ],
        { section: bare(1, 7800, 7800, 1), stiffness: { young: 29000, shear: 11000 } },
      ),
      supports: ["1", "2", "3", "4"].map((node, index) => ({
        node,
        holds: ["y", "z", "turn-x", "turn-y", ...(index === 0 ? (["x"] as const) : [])],
        settles: { y: [0, -0.625, -1.5, -0.75][index]! },
      })),
    };
    const result = solved(frame, [
      { node: "1", force: vec(0, -half, 0), moment: vec(0, 0, -end) },
      { node: "2", force: vec(0, -2 * half, 0) },
      { node: "3", force: vec(0, -2 * half, 0) },
      { node: "4", force: vec(0, -half, 0), moment: vec(0, 0, end) },
    ]);
    const expected = [-1.18099, 122.54167, -61.54036, 60.17969];
    expected.forEach((value, index) => {
      within(reactionOf(result, String(index + 1)).force.y, value, 1e-5);
    });
  });

  it("shaft held at both ends under two torques: closed form", () => {
    const frame: Frame = {
      nodes: nodes({ a: [0, 0, 0], b: [36, 0, 0], c: [132, 0, 0], d: [168, 0, 0] }),
      members: members(
        [
          ["a", "b"],
          ["b", "c"],
          ["c", "d"],
        ],
        { section: bare(1, 1, 1, 2), stiffness: KSI },
      ),
      supports: [clamp("a"), clamp("d")],
    };
    const result = solved(frame, [
      { node: "b", moment: vec(5, 0, 0) },
      { node: "c", moment: vec(10, 0, 0) },
    ]);
    within(reactionOf(result, "a").moment.x, -6.0714, 1e-4);
    within(reactionOf(result, "d").moment.x, -8.9286, 1e-4);
  });

  it("beam on elastic supports: McGuire, Gallagher and Ziemian, Matrix Structural Analysis, Example 4.15, solved exactly", () => {
    // Springs of 22.5 kip/in as bars of that stiffness.
    const count = 17;
    const at = (index: number): [number, number, number] => [15 * index, 0, 0];
    const frame: Frame = {
      nodes: nodes(
        Object.fromEntries(
          Array.from({ length: count }, (_, i) => [
            [`n${i}`, at(i)] as const,
            [`g${i}`, [15 * i, -1, 0] as [number, number, number]] as const,
          ]).flat(),
        ),
      ),
      members: [
        ...members(
          Array.from({ length: count - 1 }, (_, i) => [`n${i}`, `n${i + 1}`] as const),
          { section: bare(1, 128.5, 128.5, 1), stiffness: { young: 29000, shear: 11000 } },
        ),
        ...members(
          Array.from({ length: 15 }, (_, i) => [`g${i + 1}`, `n${i + 1}`] as const),
          {
            section: bare(22.5 / 29000, 1, 1, 1),
            stiffness: { young: 29000, shear: 11000 },
            releaseFrom: ["turn-y", "turn-z"],
            releaseTo: ["turn-x", "turn-y", "turn-z"],
          },
        ),
      ],
      supports: [
        ...Array.from({ length: count }, (_, i) => clamp(`g${i}`)),
        ...[0, count - 1].map((i) => ({ node: `n${i}`, holds: ["x", "y", "z", "turn-x", "turn-y"] as const })),
        ...Array.from({ length: count - 2 }, (_, i) => ({
          node: `n${i + 1}`,
          holds: ["x", "z", "turn-x", "turn-y"] as const,
        })),
      ],
    };
    const result = solved(frame, [{ node: "n8", force: vec(0, -40, 0) }]);
    within(forcesOf(result, "n7-n8").to.moment.z, 546.64, 1e-4);
    within(movementOf(result, "n8").shift.y, -0.2463, 2e-4);
  });

  it("cantilever with shear: P L³ / 3EI + P L / (G A_s)", () => {
    const section = { area: 3, iy: 4, iz: 5, torsion: 6, shearAreaY: 1.5, shearAreaZ: 2 };
    const frame: Frame = {
      nodes: nodes({ a: [0, 0, 0], b: [7, 0, 0] }),
      members: members([["a", "b"]], { section, stiffness: KSI }),
      supports: [clamp("a")],
    };
    const result = solved(frame, [{ node: "b", force: vec(0, 3, -2) }]);
    const { shift } = movementOf(result, "b");
    within(shift.y, 3 * (7 ** 3 / (3 * 30000 * 5) + 7 / (10000 * 1.5)), 1e-12);
    within(shift.z, -2 * (7 ** 3 / (3 * 30000 * 4) + 7 / (10000 * 2)), 1e-12);
    expect(MOVEMENTS.length).toBe(6);
  });
});
