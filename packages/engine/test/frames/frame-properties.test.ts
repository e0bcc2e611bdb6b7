import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { analyseFrame } from "../../src/frames/analyse-frame.ts";
import type { Frame, FrameMember, FrameResult, NodeLoad } from "../../src/frames/frame.ts";
import { memberStress } from "../../src/frames/member-stress.ts";
import type { Section } from "../../src/frames/section.ts";
import { multiply, type Rotation, rotate, rotationAbout } from "../../src/geometry/pose.ts";
import { add, dot, length, scale, subtract, unit, type Vec3, vec } from "../../src/geometry/vec3.ts";
import { clamp, forcesOf, movementOf, solved, solvedAll } from "./support.ts";

const STEEL = { young: 200e9, shear: 77e9 };
const anyVec = (size: number) =>
  fc
    .tuple(...[0, 1, 2].map(() => fc.double({ min: -size, max: size, noNaN: true })))
    .map(([x, y, z]) => vec(x!, y!, z!));
const anySection: fc.Arbitrary<Section> = fc.oneof(
  fc.double({ min: 0.02, max: 0.06, noNaN: true }).map((diameter) => ({
    shape: "round-tube" as const,
    diameter,
    wall: diameter / 12,
  })),
  fc
    .tuple(fc.double({ min: 0.02, max: 0.06, noNaN: true }), fc.double({ min: 0.02, max: 0.06, noNaN: true }))
    .map(([width, depth]) => ({ shape: "rectangular-tube" as const, width, depth, wall: 0.003 })),
  fc
    .tuple(fc.double({ min: 0.005, max: 0.06, noNaN: true }), fc.double({ min: 0.01, max: 0.06, noNaN: true }))
    .map(([width, depth]) => ({ shape: "flat-bar" as const, width, depth })),
);

/** A chain of nodes from a clamped one, closed once: every member carries something. */
const anyFrame: fc.Arbitrary<Frame> = fc
  .array(fc.tuple(anyVec(0.1), anySection, anyVec(1)), { minLength: 3, maxLength: 6 })
  .map((steps) => {
    const nodes = [{ id: "n0", point: vec(0, 0, 0) }];
    const members: FrameMember[] = [];
    steps.forEach(([wobble, section, depth], index) => {
      const last = nodes[index]!;
      nodes.push({ id: `n${index + 1}`, point: add(add(last.point, vec(0.25, index % 2, 0.3)), wobble) });
      members.push({
        id: `m${index}`,
        from: `n${index}`,
        to: `n${index + 1}`,
        section,
        stiffness: STEEL,
        ...(length(depth) > 0.1 && { depth }),
      });
    });
    members.push({ id: "closing", from: "n0", to: `n${steps.length}`, section: steps[0]![1], stiffness: STEEL });
    return { nodes, members, supports: [clamp("n0")] };
  });

const anyLoads = (frame: Frame): fc.Arbitrary<readonly NodeLoad[]> =>
  fc
    .array(fc.tuple(fc.nat({ max: frame.nodes.length - 1 }), anyVec(5000), anyVec(800)), { minLength: 1, maxLength: 4 })
    .map((loads) => loads.map(([node, force, moment]) => ({ node: frame.nodes[node]!.id, force, moment })));

const framed = anyFrame.chain((frame) => fc.tuple(fc.constant(frame), anyLoads(frame), anyLoads(frame)));
const biggest = (result: FrameResult): number => Math.max(1e-12, ...result.movements.map(({ shift }) => length(shift)));
/** Relative to the largest movement: what a well-conditioned solve leaves of sixteen digits. */
const SAME = 1e-8;

describe("properties of the frame analysis", () => {
  it("loads and reactions balance, and so do the members' ends", () => {
    fc.assert(
      fc.property(framed, ([frame, loads]) => {
        const result = solved(frame, loads);
        expect(result.residual).toBeLessThan(1e-8);
        for (const { from, to } of result.members) {
          const size = 1 + length(from.force);
          expect(length(add(from.force, to.force)) / size).toBeLessThan(1e-8);
        }
      }),
      { numRuns: 60, seed: 1 },
    );
  });

  it("two load cases together are their sum", () => {
    fc.assert(
      fc.property(framed, ([frame, one, other]) => {
        const [a, b, both] = solvedAll(frame, [
          { id: "one", loads: one },
          { id: "other", loads: other },
          { id: "both", loads: [...one, ...other] },
        ]) as [FrameResult, FrameResult, FrameResult];
        frame.nodes.forEach(({ id }) => {
          const sum = add(movementOf(a, id).shift, movementOf(b, id).shift);
          expect(length(subtract(sum, movementOf(both, id).shift))).toBeLessThan(SAME * (biggest(a) + biggest(b)));
        });
      }),
      { numRuns: 40, seed: 2 },
    );
  });

  it("does not depend on the order of nodes and members, nor on which end a member begins", () => {
    fc.assert(
      fc.property(framed, ([frame, loads]) => {
        const turned: Frame = {
          nodes: [...frame.nodes].reverse(),
          members: [...frame.members].reverse().map((member) => ({ ...member, from: member.to, to: member.from })),
          supports: frame.supports,
        };
        const a = solved(frame, loads);
        const b = solved(turned, loads);
        for (const { id } of frame.nodes) {
          const apart = subtract(movementOf(a, id).shift, movementOf(b, id).shift);
          expect(length(apart)).toBeLessThan(SAME * biggest(a));
        }
        for (const member of frame.members) {
          const one = memberStress(member, forcesOf(a, member.id))!;
          const other = memberStress(member, forcesOf(b, member.id))!;
          expect(Math.abs(one.from.combined - other.to.combined)).toBeLessThan(1e-6 * (1 + one.from.combined));
        }
      }),
      { numRuns: 40, seed: 3 },
    );
  });

  it("turned in space it moves turned", () => {
    fc.assert(
      fc.property(framed, anyVec(1), ([frame, loads], way) => {
        fc.pre(length(way) > 0.1);
        const turn: Rotation = multiply(rotationAbout(unit(way), 1.1), rotationAbout(vec(0, 0, 1), 0.4));
        const spin = (v: Vec3): Vec3 => rotate(turn, v);
        const straight: Frame = {
          ...frame,
          members: frame.members.map((member) => ({ ...member, depth: member.depth ?? vec(0.3, 0.2, 1) })),
        };
        const turned: Frame = {
          ...straight,
          nodes: straight.nodes.map(({ id, point }) => ({ id, point: spin(point) })),
          members: straight.members.map((member) => ({ ...member, depth: spin(member.depth!) })),
        };
        const a = solved(straight, loads);
        const b = solved(
          turned,
          loads.map(({ node, force, moment }) => ({ node, force: spin(force!), moment: spin(moment!) })),
        );
        for (const { id } of frame.nodes) {
          const apart = subtract(spin(movementOf(a, id).shift), movementOf(b, id).shift);
          expect(length(apart)).toBeLessThan(SAME * biggest(a));
        }
      }),
      { numRuns: 40, seed: 4 },
    );
  });

  it("reciprocity: what a force at one node moves another along a way, that node's force moves the first (Maxwell, Betti)", () => {
    fc.assert(
      fc.property(anyFrame, anyVec(1), anyVec(1), (frame, p, q) => {
        const [one, other] = [frame.nodes[1]!.id, frame.nodes[2]!.id];
        const [a, b] = solvedAll(frame, [
          { id: "a", loads: [{ node: one, force: scale(p, 1000) }] },
          { id: "b", loads: [{ node: other, force: scale(q, 1000) }] },
        ]) as [FrameResult, FrameResult];
        const across = dot(movementOf(a, other).shift, q);
        const back = dot(movementOf(b, one).shift, p);
        expect(Math.abs(across - back)).toBeLessThan(SAME * (biggest(a) + biggest(b)));
      }),
      { numRuns: 40, seed: 5 },
    );
  });

  it("a member cut in two by a node that carries nothing moves as before", () => {
    fc.assert(
      fc.property(framed, ([frame, loads]) => {
        const [first, ...others] = frame.members as [FrameMember, ...FrameMember[]];
        const [a, b] = frame.nodes as [Frame["nodes"][number], Frame["nodes"][number]];
        const middle = { id: "middle", point: scale(add(a.point, b.point), 0.5) };
        const cut: Frame = {
          ...frame,
          nodes: [...frame.nodes, middle],
          members: [{ ...first, to: "middle" }, { ...first, id: "second half", from: "middle" }, ...others],
        };
        const whole = solved(frame, loads);
        const halves = solved(cut, loads);
        for (const { id } of frame.nodes) {
          const apart = subtract(movementOf(whole, id).shift, movementOf(halves, id).shift);
          expect(length(apart)).toBeLessThan(SAME * biggest(whole));
        }
      }),
      { numRuns: 40, seed: 6 },
    );
  });

  it("a member with stiff offsets moves as one between nodes at its ends", () => {
    const section: Section = { shape: "rectangular-tube", width: 0.03, depth: 0.05, wall: 0.003 };
    const common = { from: "a", to: "b", section, stiffness: STEEL };
    const [a, b] = [vec(0, 0, 0), vec(0.1, 0.6, 0.2)];
    const [offsetFrom, offsetTo] = [vec(0.01, 0.02, 0.05), vec(-0.03, 0.01, -0.04)];
    const withOffsets: Frame = {
      nodes: [
        { id: "a", point: a },
        { id: "b", point: b },
      ],
      members: [{ ...common, id: "m", offsetFrom, offsetTo }],
      supports: [clamp("a")],
    };
    const force = vec(300, -200, 900);
    const moved = movementOf(solved(withOffsets, [{ node: "b", force }]), "b");
    // The same by hand: the member's own end, with the moment that the offset brings, then carried back to the node.
    const own: Frame = {
      nodes: [
        { id: "a", point: add(a, offsetFrom) },
        { id: "b", point: add(b, offsetTo) },
      ],
      members: [{ ...common, id: "m" }],
      supports: [clamp("a")],
    };
    const back = scale(offsetTo, -1);
    const moment = vec(
      back.y * force.z - back.z * force.y,
      back.z * force.x - back.x * force.z,
      back.x * force.y - back.y * force.x,
    );
    const end = movementOf(solved(own, [{ node: "b", force, moment }]), "b");
    const carried = add(
      end.shift,
      vec(
        end.turn.y * back.z - end.turn.z * back.y,
        end.turn.z * back.x - end.turn.x * back.z,
        end.turn.x * back.y - end.turn.y * back.x,
      ),
    );
    expect(length(subtract(moved.shift, carried))).toBeLessThan(1e-12 * length(carried) + 1e-18);
  });
});

describe("frames that cannot be analysed are refused with the place", () => {
  const section: Section = { shape: "round-tube", diameter: 0.03, wall: 0.003 };
  const member = { id: "m", from: "a", to: "b", section, stiffness: STEEL };
  const nodes = [
    { id: "a", point: vec(0, 0, 0) },
    { id: "b", point: vec(1, 0, 0) },
  ];
  it("what turns freely", () => {
    const frame: Frame = { nodes, members: [member], supports: [{ node: "a", holds: ["x", "y", "z"] }] };
    expect(analyseFrame(frame, [])).toMatchObject({ ok: false, fault: "mechanism" });
  });
  it("a node that no member holds", () => {
    const frame: Frame = {
      nodes: [...nodes, { id: "c", point: vec(0, 1, 0) }],
      members: [member],
      supports: [clamp("a")],
    };
    expect(analyseFrame(frame, [])).toMatchObject({ ok: false, fault: "mechanism", node: "c" });
  });
  it("a member without length, a node that is not there", () => {
    const none: Frame = { nodes, members: [{ ...member, to: "a" }], supports: [clamp("a")] };
    expect(analyseFrame(none, [])).toMatchObject({ ok: false, fault: "member-without-length", member: "m" });
    const unknown: Frame = { nodes, members: [{ ...member, to: "q" }], supports: [] };
    expect(analyseFrame(unknown, [])).toMatchObject({ ok: false, fault: "unknown-node", node: "q" });
  });
});
