import { study } from "@armwright/engine";
import { readCarValue } from "@armwright/engine/document";
import { describe, expect, test } from "vitest";
import { exampleDocument } from "../../../engine/test/example-documents.ts";
import { bookLeaves } from "../../src/book.ts";
import { cutList } from "../../src/cut/cut-list.ts";
import { linesOf, readNumber } from "../sheets/leaf-text.ts";

/*
 * Lengths to cut, worked out by hand from the numbers as they are typed in the document: centre to centre, less the rod end of
 * each end, plus the thread that stays in its bung in mid adjustment (two thread diameters).
 */

type Point = Readonly<Record<"x" | "y" | "z", number | string>>;
/** `12 3/16` and `12.5` as numbers. */
const number = (typed: number | string): number =>
  typeof typed === "number"
    ? typed
    : typed
        .trim()
        .split(/[ ]+/)
        .reduce((sum, part) => {
          const [a, b] = part.replace("-", "").split("/").map(Number);
          return sum + (b === undefined ? a! : a! / b);
        }, 0) * (typed.trim().startsWith("-") ? -1 : 1);
const apart = (a: Point, b: Point): number => Math.hypot(...AXES.map((axis) => number(a[axis]) - number(b[axis])));
const AXES = ["x", "y", "z"] as const;

type Editable = ReturnType<typeof exampleDocument>;
const listOf = (document: unknown) => {
  const reading = readCarValue(document);
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  return { reading, list: cutList(study(reading.car).corner) };
};

const linkEnds = ({ rodEnds }: Editable): Record<string, unknown>[] =>
  ["upperLink.inner", "upperLink.outer"].map((pivot) => (rodEnds as Record<string, Record<string, unknown>>)[pivot]!);
const linkOf = ({ linkage }: Editable) =>
  (linkage as unknown as { upperLink: { inner: Point; outer: Point } }).upperLink;

describe("links", () => {
  test("inch: ball to ball less 2 1/2 in of rod end at each end, plus 1 1/2 in of thread in each bung", () => {
    const document = exampleDocument("saltbush");
    for (const end of linkEnds(document)) end["length"] = "2 1/2";
    const upperLink = linkOf(document);
    const { list } = listOf(document);
    const piece = list.lines.find(({ piece: { name } }) => name === "upper link")!.piece;
    expect(piece.centres / 0.0254).toBeCloseTo(apart(upperLink.inner, upperLink.outer), 9);
    expect(piece.length / 0.0254).toBeCloseTo(apart(upperLink.inner, upperLink.outer) - 2 * (2.5 - 2 * 0.75), 9);
  });

  test("inch, nothing said of the rod end: four diameters of it are taken, and said to be assumed", () => {
    const document = exampleDocument("saltbush");
    const upperLink = linkOf(document);
    const { piece } = listOf(document).list.lines.find(({ piece: { name } }) => name === "upper link")!;
    expect(piece.length / 0.0254).toBeCloseTo(apart(upperLink.inner, upperLink.outer) - 2 * (4 - 2) * 0.75, 9);
    expect(piece.from.kind === "bung" && piece.from.setBack.assumed.join()).toContain("measure yours");
  });

  test("metric: M16 thread, 70 mm from ball to end of thread: 38 mm less at each end", () => {
    const document = exampleDocument("juniper");
    for (const end of linkEnds(document)) Object.assign(end, { thread: "M16x1.5", length: 70 });
    const upperLink = linkOf(document);
    const { piece } = listOf(document).list.lines.find(({ piece: { name } }) => name === "upper link")!;
    expect(piece.length * 1000).toBeCloseTo(apart(upperLink.inner, upperLink.outer) - 2 * (70 - 2 * 16), 9);
  });
});

describe.each(["saltbush", "juniper"] as const)("the cut list of %s as printed", (name) => {
  const document = exampleDocument(name);
  const { reading, list } = listOf(document);
  const lines = bookLeaves(study(reading.car), reading.document, { paper: "letter", date: new Date(0) })
    .filter(({ id }) => id.startsWith("cut-list"))
    .flatMap(linesOf);
  const unit = document.units === "metric" ? 0.001 : 0.0254;
  const half = document.units === "metric" ? 0.25 : 1 / 32;

  test("has every tube with the length to the tape's nearest mark", () => {
    for (const { number: count, piece } of list.lines) {
      const row = lines.find(([first]) => first === `${count}`)!;
      const [centres, cut] = row.map(readNumber).filter((value, i) => i > 1 && !Number.isNaN(value));
      expect(Math.abs(centres! - piece.centres / unit), piece.name).toBeLessThanOrEqual(half + 1e-6);
      expect(Math.abs(cut! - piece.length / unit), piece.name).toBeLessThanOrEqual(half + 1e-6);
    }
  });
});

test("a cross tube coped at both ends: closed form of two slanting cylinders, the wall's least at each angle", () => {
  // Without tubes or frame of its own: the starting frame of 1 1/2 × .120.
  const { strength: _, ...document } = exampleDocument("saltbush") as Editable & { readonly strength?: unknown };
  const { lowerArm } = document.linkage as unknown as { lowerArm: Readonly<Record<string, Point>> };
  const { list } = listOf(document);
  const { piece } = list.lines.find(({ piece: { name } }) => name.includes("cross tube"))!;
  // The angle at which it meets the front tube, from the typed points: the cross tube runs fore and aft.
  const [front, outer] = [lowerArm["innerFront"]!, lowerArm["outerFront"]!];
  const run = AXES.map((axis) => number(outer[axis]) - number(front[axis]));
  const size = Math.hypot(...run);
  if (piece.from.kind !== "cope" || piece.to.kind !== "cope") throw new Error("the cross tube is not coped");
  const way = AXES.map((axis) => piece.from.point[axis] - piece.to.point[axis]);
  const cosine = Math.abs(run.reduce((sum, value, i) => sum + value * way[i]!, 0) / size / Math.hypot(...way));
  const beta = Math.acos(cosine);
  const [R, ro, ri] = [0.75, 0.75, 0.75 - 0.12].map((inch) => inch * 0.0254) as [number, number, number];
  /** How far the wall may reach at an angle, from where the axes meet, m: the shortest of the wall's thickness. */
  const reach = (phi: number): number =>
    Math.min(
      ...Array.from({ length: 401 }, (_, k) => {
        const rho = ri + ((ro - ri) * k) / 400;
        const under = R * R - (rho * Math.sin(phi)) ** 2;
        return under < 0
          ? Number.POSITIVE_INFINITY
          : -(rho * Math.cos(phi) * Math.cos(beta) + Math.sqrt(under)) / Math.sin(beta);
      }),
    );
  const tip = Math.max(...Array.from({ length: 720 }, (_, k) => reach((Math.PI * k) / 360)));
  expect(piece.from.tip).toBeCloseTo(tip, 5);
  expect(piece.length).toBeCloseTo(piece.centres + piece.from.tip + piece.to.tip, 12);
});
