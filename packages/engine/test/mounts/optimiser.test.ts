import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { makeCorner } from "../../src/cycle/corner.ts";
import { findMounts } from "../../src/mounts/find-mounts.ts";
import { demerit } from "../../src/mounts/rank.ts";
import { exampleCar } from "./request-for.ts";

interface Optimum {
  readonly name: string;
  readonly demerit: number;
}

const here = new URL("../../../../reference/mounts/", import.meta.url);
const optima: readonly Optimum[] = JSON.parse(readFileSync(new URL("optima.json", here), "utf8"));

/** The optimiser's own judge leaves out the bounds between stations, millimetres: what they are worth in demerit. */
const BOUNDS = 0.01;

it.each(optima)("a general optimiser finds nothing better on $name", async ({ name, demerit: theirs }) => {
  const { requestOf } = await import(new URL("request.mjs", here).href);
  const car = exampleCar(name);
  const corner = makeCorner(car);
  const { best } = findMounts(corner, requestOf(car, corner));
  const ours = Math.min(
    ...best.map((each) =>
      demerit(requestOf(car, corner).requirements, {
        ...each,
        ratioRise: each.progression,
        loadPath: 0,
      }),
    ),
  );
  expect(ours).toBeLessThan(theirs + BOUNDS);
});
