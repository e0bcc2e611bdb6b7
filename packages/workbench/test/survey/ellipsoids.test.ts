import type { SurveyResult, Vec3 } from "@armwright/engine";
import { expect, test } from "vitest";
import { ENLARGED, ellipseOf, ellipsoidsOf } from "../../src/survey/ellipsoids.ts";

/** One point whose covariance (m²) is given by rows. */
const resultOf = (rows: readonly (readonly number[])[]): SurveyResult =>
  ({
    points: [{ name: "p", at: { x: 1, y: 2, z: 3 }, sd: { x: 0, y: 0, z: 0 }, isUndetermined: false }],
    covariance: rows.map((row) => Float64Array.from(row)),
  }) as unknown as SurveyResult;

const radiiOf = (rows: readonly (readonly number[])[]): readonly Vec3[] =>
  ellipsoidsOf(resultOf(rows)).flatMap(({ radii }) => radii);

const COVARIANCE = [
  [4e-6, 1e-6, -5e-7],
  [1e-6, 9e-6, 2e-6],
  [-5e-7, 2e-6, 1e-6],
];

test("the radii span the 95 % region: R·Rᵀ is the covariance times chi-square's 95 % point, enlarged", () => {
  const radii = radiiOf(COVARIANCE);
  const size = 7.815 * ENLARGED ** 2;
  const axes = ["x", "y", "z"] as const;
  axes.forEach((a, i) => {
    axes.forEach((b, j) => {
      const product = radii.reduce((sum, radius) => sum + radius[a] * radius[b], 0);
      expect(product / size).toBeCloseTo(COVARIANCE[i]![j]!, 12);
    });
  });
});

test("a view's ellipse has the plane's principal spreads and the right turn", () => {
  const right = { x: 0, y: -1, z: 0 };
  const down = { x: 0, y: 0, z: -1 };
  const { major, minor, turn } = ellipseOf(resultOf(COVARIANCE), 0, right, down);
  // Of [[9, 2], [2, 1]]·1e-6: eigenvalues 5 ± √20.
  const size = Math.sqrt(5.991) * ENLARGED * 1e-3;
  expect(major / size).toBeCloseTo(Math.sqrt(5 + Math.sqrt(20)), 9);
  expect(minor / size).toBeCloseTo(Math.sqrt(5 - Math.sqrt(20)), 9);
  expect(Math.tan(2 * turn)).toBeCloseTo(4 / 8, 9);
});

test("a point that holds exactly is a point", () => {
  const radii = radiiOf([
    [0, 0, 0],
    [0, 0, 0],
    [0, 0, 0],
  ]);
  expect(radii.every(({ x, y, z }) => x === 0 && y === 0 && z === 0)).toBe(true);
});
