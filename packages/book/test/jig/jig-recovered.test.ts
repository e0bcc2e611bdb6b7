import { makeCorner, parseLength, type Vec3 } from "@armwright/engine";
import { Matrix, SingularValueDecomposition } from "ml-matrix";
import { describe, expect, test } from "vitest";
import { EXAMPLES, exampleCar } from "../../../engine/test/example-documents.ts";
import { distancesCsv } from "../../src/files/points-csv.ts";
import { jigParts } from "../../src/jig/jig-part.ts";

/*
 * A jig built by the sheet alone: from the printed distances (to 1/32 in, or half a millimetre) the places are found again
 * by least squares, laid onto the car's own as well as they can be, and compared. The whole corner comes back from distances
 * alone; a part that is nearly flat does not, square to its plane (a tape across it hardly changes), and so is laid on the
 * bench with the heights that its sheet gives.
 */

/** Printed distances of one part, m, by the labels of their two ends. */
function printed(csv: string, part: string, units: "inch-pound" | "metric"): Map<string, number> {
  const rows = csv
    .trim()
    .split("\r\n")
    .slice(1)
    .map((line) => [...line.matchAll(/"((?:[^"]|"")*)"|([^,]+)/g)].map((match) => match[1] ?? match[2] ?? ""));
  return new Map(
    rows
      .filter(([title]) => title === part)
      .map(([, from, to, , tape]) => {
        const length = parseLength(tape!, units);
        if (!length.ok) throw new Error(`not a tape reading: ${tape}`);
        return [`${from}|${to}`, length.metres];
      }),
  );
}

/** Places from distances alone: Gauss and Newton steps from a start that only has to be roughly right. */
function fromDistances(
  start: readonly Vec3[],
  pairs: readonly (readonly [number, number, number])[],
  heights: readonly number[],
): number[][] {
  let points = start.map(({ x, y, z }) => [x, y, z]);
  for (let step = 0; step < 60; step += 1) {
    const rows = [...pairs, ...heights].map(() => new Array<number>(3 * points.length).fill(0));
    const misfit = pairs.map(([i, j, wanted], row) => {
      const d = [0, 1, 2].map((k) => points[i]![k]! - points[j]![k]!);
      const length = Math.hypot(...d);
      for (let k = 0; k < 3; k += 1) {
        rows[row]![3 * i + k] = d[k]! / length;
        rows[row]![3 * j + k] = -d[k]! / length;
      }
      return [wanted - length];
    });
    heights.forEach((height, i) => {
      rows[pairs.length + i]![3 * i + 2] = 1;
      misfit.push([height - points[i]![2]!]);
    });
    // Six movements of the whole are free: the shortest step leaves them alone.
    const svd = new SingularValueDecomposition(new Matrix(rows), { autoTranspose: true });
    const change = leastNorm(svd, new Matrix(misfit));
    points = points.map((point, i) => point.map((value, k) => value + change[3 * i + k]!));
  }
  return points;
}

function leastNorm(svd: SingularValueDecomposition, right: Matrix): number[] {
  const largest = svd.diagonal[0]!;
  const scaled = svd.leftSingularVectors.transpose().mmul(right);
  const weights = svd.diagonal.map((value, i) => (value > 1e-9 * largest ? scaled.get(i, 0) / value : 0));
  return svd.rightSingularVectors.mmul(Matrix.columnVector(weights)).to1DArray();
}

/** Largest distance left after the two sets are laid on each other by a turn and a shift (Kabsch). */
function laidOver(found: number[][], wanted: readonly Vec3[]): number {
  const a = new Matrix(found);
  const b = new Matrix(wanted.map(({ x, y, z }) => [x, y, z]));
  const centred = (m: Matrix): Matrix => m.clone().subRowVector(m.mean("column"));
  const [p, q] = [centred(a), centred(b)];
  const svd = new SingularValueDecomposition(p.transpose().mmul(q));
  const turn = svd.rightSingularVectors.mmul(svd.leftSingularVectors.transpose());
  const left = p.mmul(turn.transpose()).sub(q);
  return Math.max(...left.to2DArray().map((row) => Math.hypot(...row)));
}

describe.each(EXAMPLES)("a jig of %s built from its printed distances alone", (name) => {
  const car = exampleCar(name);
  const corner = makeCorner(car);
  const csv = distancesCsv(corner);
  const half = car.units === "metric" ? 0.00025 : 0.0254 / 64;

  test.each(jigParts(corner).filter(({ points }) => points.length > 3))("$title", ({ title, points, heights }) => {
    const distances = printed(csv, title, car.units);
    const pairs = points.flatMap((from, i) =>
      points.slice(i + 1).map((to, k): [number, number, number] => {
        const length = distances.get(`${from.label}|${to.label}`);
        expect(length).toBeDefined();
        return [i, i + 1 + k, length!];
      }),
    );
    expect(pairs).toHaveLength((points.length * (points.length - 1)) / 2);
    // The start is the car shaken by an inch and more, so that the answer comes from the distances.
    const start = points.map(({ point }, i) => ({
      x: point.x + 0.03 * Math.sin(7 * i + 1),
      y: point.y + 0.03 * Math.cos(5 * i),
      z: point.z + 0.02 * Math.sin(3 * i + 2),
    }));
    const found = fromDistances(
      start,
      pairs,
      heights?.map((height) => Math.round(height / (2 * half)) * 2 * half) ?? [],
    );
    for (const [i, j, wanted] of pairs) {
      const length = Math.hypot(...[0, 1, 2].map((k) => found[i]![k]! - found[j]![k]!));
      // Each printed length is off by at most half its step; the fit shares that out.
      expect(Math.abs(length - wanted)).toBeLessThan(2 * half);
    }
    expect(
      laidOver(
        found,
        points.map(({ point }) => point),
      ),
    ).toBeLessThan(4 * half);
  });
});
