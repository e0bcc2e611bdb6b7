import type { BodyId } from "../../car/car.ts";
import { type Assumed, inches } from "../assumed.ts";
import { tellField } from "../fields.ts";
import type { Path } from "../path.ts";

export const TUBE_ASSUMED = {
  arm: {
    dimension: "length",
    from: () => inches(1.5),
    words: "1 1/2 in",
    because: "common practice for an arm's tubes",
  },
  link: {
    dimension: "length",
    from: () => inches(1.25),
    words: "1 1/4 in",
    because: "common practice for a link's tube",
  },
} as const satisfies Record<string, Assumed>;

/** The field that tells one kind of linkage from the others. */
export const kindField = <const Kind extends string>(kind: Kind) => tellField(kind, "Kind of linkage.");

/** What the checks need to know of a linkage kind, whatever its numbers. Paths start inside `linkage`. */
export interface LinkageForm {
  readonly kind: string;
  /** Arms that points can ride on, beside chassis and spindle. */
  readonly arms: readonly BodyId[];
  readonly pivots: (linkage: unknown) => readonly PivotPlace[];
  /** Pairs that span a hinge line: they must lie apart. */
  readonly axes: readonly (readonly [Path, Path])[];
  /** Points that must lie off the line through a hinge: an arm has a length. */
  readonly offAxis: readonly { readonly point: Path; readonly axis: readonly [Path, Path] }[];
  /** Pairs that must lie apart. */
  readonly apart: (linkage: unknown) => readonly (readonly [Path, Path])[];
}

export interface PivotPlace {
  /** As `rodEnds` names it. */
  readonly name: string;
  readonly path: Path;
  readonly end: "inner" | "outer";
  /** On an arm's hinge (two points of it), or at the end of a link (its inner and outer point). */
  readonly along: { readonly hinge: readonly [Path, Path] } | { readonly link: readonly [Path, Path] };
  /** Parts that may hold the bolt, the likelier first. */
  readonly boltOn: readonly [BodyId, ...BodyId[]];
}

/** The two ends of a two-point link. */
export function linkPivots(name: string, path: Path): readonly PivotPlace[] {
  const inner = [...path, "inner"];
  const outer = [...path, "outer"];
  return [
    { name: `${name}.inner`, path: inner, end: "inner", along: { link: [inner, outer] }, boltOn: ["chassis"] },
    { name: `${name}.outer`, path: outer, end: "outer", along: { link: [inner, outer] }, boltOn: ["spindle"] },
  ];
}

/** Pivots on an arm's hinge line. */
export function hingePivots(
  arm: string,
  armBody: BodyId,
  end: "inner" | "outer",
  points: readonly string[],
  hinge: readonly [string, string],
): readonly PivotPlace[] {
  const line: readonly [Path, Path] = [
    [arm, hinge[0]],
    [arm, hinge[1]],
  ];
  return points.map((point) => ({
    name: `${arm}.${point}`,
    path: [arm, point],
    end,
    along: { hinge: line },
    boltOn: [end === "inner" ? "chassis" : "spindle", armBody],
  }));
}
