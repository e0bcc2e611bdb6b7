import { describe, expect, test } from "vitest";
import { copeLine, usualSeam } from "../../src/cope/cope-line.ts";
import { copeTemplate } from "../../src/cope/cope-template.ts";
import type { Leaf } from "../../src/paper/leaf.ts";
import { PAGE_SIZES } from "../../src/paper/page-size.ts";
import { RULER_INCHES, RULER_MM, ruler } from "../../src/paper/ruler.ts";
import { writePdf } from "../../src/paper/write-pdf.ts";
import { faces, hasRenderer, PIXELS_PER_MM, type Rendered, rendered, selectable } from "./rendered.ts";

/*
 * Pages are rendered with Debian's pdftoppm and measured in pixels, ten to a mm. What is 1:1 on paper may be off by 0.2 mm.
 */
const TRUE = 0.2 * PIXELS_PER_MM;

const DIAMETER = 38.1;
const outward = { x: 0, y: 0, z: -1 };
const header = { point: { x: 0, y: 0, z: 0 }, direction: { x: 1, y: 0, z: 0 }, radius: 0.0222 };
const cope = copeLine({
  origin: { x: 0, y: 0, z: 0 },
  outward,
  seam: usualSeam(outward, header.direction),
  outerRadius: DIAMETER / 2000,
  wall: 0.0024,
  onto: [header],
});

const leafOn = (paper: "letter" | "a4"): Leaf => ({
  id: "template",
  title: "Template",
  page: PAGE_SIZES[paper],
  isTrueSize: true,
  parts: [
    ...copeTemplate(cope, { title: "Cross tube", under: "⌀ 1 1/2 × .095", outerDiameter: DIAMETER }, 20, 40).parts,
    ...ruler(20, 140),
  ],
});

/** Middles of the first and of the last line that a row of pixels crosses, between two columns. */
function darkSpan(page: Rendered, y: number, from: number, to: number): readonly [number, number] {
  const dark = Array.from({ length: to - from }, (_, i) => from + i).filter((x) => page.isDark(x, y));
  const runFrom = (start: number, way: 1 | -1): number => {
    let x = start;
    while (page.isDark(x + way, y) && Math.abs(x - start) < MOST_LINE) x += way;
    return (start + x) / 2;
  };
  return [runFrom(dark[0] ?? Number.NaN, 1), runFrom(dark.at(-1) ?? Number.NaN, -1)];
}

/** No line is wider than this, pixels: 0.6 mm. */
const MOST_LINE = 6;

describe.skipIf(!hasRenderer)("true-size pages, as printed", () => {
  test.each(["letter", "a4"] as const)("on %s", async (paper) => {
    const pdf = await writePdf([leafOn(paper)], { title: "t", subject: "s", date: new Date(0) });
    const page = rendered(pdf, 1);
    expect(page.width).toBeCloseTo(PAGE_SIZES[paper].width * PIXELS_PER_MM, -0.5);
    // Just above the lower edge of both rules: their ends, and the longest marks between.
    const edge = Math.round((140 + 5.5 + 3.5) * PIXELS_PER_MM);
    const [left, right] = darkSpan(page, edge, 100, 1215);
    expect(Math.abs(right - left - RULER_MM * PIXELS_PER_MM)).toBeLessThanOrEqual(TRUE);
    const [start, end] = darkSpan(page, edge, 1225, page.width - 10);
    expect(Math.abs(end - start - RULER_INCHES * 25.4 * PIXELS_PER_MM)).toBeLessThanOrEqual(TRUE);
  });

  test("a template goes once round its tube, and its cut is as deep as two cylinders make it", async () => {
    const pdf = await writePdf([leafOn("letter")], { title: "t", subject: "s", date: new Date(0) });
    const page = rendered(pdf, 1);
    const columns = Array.from({ length: 1400 }, (_, i) => 150 + i);
    const top = (x: number): number => {
      for (let y = 350; y < 1300; y += 1) if (page.isDark(x, y)) return y;
      return Number.NaN;
    };
    const bottomEdge = Math.max(...columns.slice(100, 800).map((x) => lowest(page, x)));
    const [left, right] = darkSpan(page, bottomEdge - 4, 150, 1450);
    expect(Math.abs(right - left - Math.PI * DIAMETER * PIXELS_PER_MM)).toBeLessThanOrEqual(TRUE);
    // Deepest against highest place of the cut: R − √(R² − r²) on the inside of the wall.
    const tops = columns.filter((x) => x > left + 6 && x < right - 6).map(top);
    const depth = Math.max(...tops) - Math.min(...tops);
    const inner = DIAMETER / 2 - 2.4;
    expect(Math.abs(depth - (22.2 - Math.sqrt(22.2 ** 2 - inner ** 2)) * PIXELS_PER_MM)).toBeLessThanOrEqual(TRUE);
  });

  test("text can be selected, and its faces are embedded", async () => {
    const pdf = await writePdf([leafOn("letter")], { title: "t", subject: "s", date: new Date(0) });
    expect(selectable(pdf)).toContain("this edge square round the tube");
    const found = faces(pdf);
    expect(found.length).toBeGreaterThan(1);
    for (const face of found) expect(face).toMatchObject({ isEmbedded: true });
  });

  test("the same leaves and date give the same bytes", async () => {
    const facts = { title: "t", subject: "s", date: new Date(0) };
    const [a, b] = await Promise.all([writePdf([leafOn("letter")], facts), writePdf([leafOn("letter")], facts)]);
    expect(Buffer.from(a!).equals(Buffer.from(b!))).toBe(true);
  });
});

/** The lowest dark pixel of a column above the ruler. */
function lowest(page: Rendered, x: number): number {
  for (let y = 1380; y > 350; y -= 1) if (page.isDark(x, y)) return y;
  return 0;
}
