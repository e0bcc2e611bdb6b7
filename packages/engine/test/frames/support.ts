import { analyseFrame } from "../../src/frames/analyse-frame.ts";
import {
  type Frame,
  type FrameLoadCase,
  type FrameMember,
  type FrameResult,
  MOVEMENTS,
  type NodeLoad,
} from "../../src/frames/frame.ts";
import type { SectionProperties } from "../../src/frames/section.ts";
import { vec } from "../../src/geometry/vec3.ts";

/** So much shear area that shear deformation is nothing: for textbooks that leave it out. */
export const SHEAR_STIFF = 1e9;

export const bare = (area: number, iy: number, iz: number, torsion: number): SectionProperties => ({
  area,
  iy,
  iz,
  torsion,
  shearAreaY: SHEAR_STIFF,
  shearAreaZ: SHEAR_STIFF,
});

export const nodes = (points: Readonly<Record<string, readonly [number, number, number]>>): Frame["nodes"] =>
  Object.entries(points).map(([id, [x, y, z]]) => ({ id, point: vec(x, y, z) }));

export const clamp = (node: string) => ({ node, holds: MOVEMENTS });

/** Members between named nodes, all alike. */
export const members = (
  pairs: readonly (readonly [string, string])[],
  common: Omit<FrameMember, "id" | "from" | "to">,
): readonly FrameMember[] => pairs.map(([from, to]) => ({ ...common, id: `${from}-${to}`, from, to }));

export function solved(frame: Frame, loads: readonly NodeLoad[]): FrameResult {
  return solvedAll(frame, [{ id: "case", loads }])[0]!;
}

export function solvedAll(frame: Frame, cases: readonly FrameLoadCase[]): readonly FrameResult[] {
  const analysis = analyseFrame(frame, cases);
  if (!analysis.ok) throw new Error(JSON.stringify(analysis));
  return analysis.results;
}

export const movementOf = (result: FrameResult, node: string) => result.movements.find((each) => each.node === node)!;
export const reactionOf = (result: FrameResult, node: string) => result.reactions.find((each) => each.node === node)!;
export const forcesOf = (result: FrameResult, member: string) => result.members.find((each) => each.member === member)!;
