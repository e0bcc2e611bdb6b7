import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { ROW } from "../../src/cycle/row.ts";
import { camberMovables, type Movable, plungeMovables, singlePivots } from "../../src/solve/movables.ts";
import { leastOffset, type MoveTask, offsetBy, taskValue } from "../../src/solve/move-points.ts";
import { rangeOf } from "../../src/solve/over-travel.ts";
import { pointAt } from "../../src/solve/point-places.ts";
import { askable, type EXAMPLES } from "./subject.ts";

// Made by reference/solve: SciPy's differential evolution and Nelder and Mead's simplex, with a motion of its own.
interface Problem {
  readonly name: string;
  readonly car: (typeof EXAMPLES)[number];
  readonly question: "constant-camber" | "least-plunge" | "least-toe";
  readonly point: string;
  readonly reach: { readonly x?: number; readonly y?: number; readonly z?: number };
  readonly travels: readonly number[];
  readonly points: Readonly<Record<string, { readonly x: number; readonly y: number; readonly z: number }>>;
}
interface Optimum {
  readonly name: string;
  readonly start: number;
  readonly best: number;
  readonly offset: { readonly x?: number; readonly y?: number; readonly z?: number };
}
const read = (file: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../../../reference/solve/${file}`, import.meta.url), "utf8"));
const problems = read("problems.json") as readonly Problem[];
const { optima } = read("optima.json") as { readonly optima: readonly Optimum[] };

/** Both motions are solved to about this, rad or m. */
const SAME_MOTION = 1e-9;
/** Nothing better than by what both motions are solved to. */
const NOTHING_BETTER = 1e-9;
const PLACES = { "constant-camber": ROW.camber, "least-plunge": ROW.shaftLength, "least-toe": ROW.toe } as const;

describe.each(problems)("$name", (problem) => {
  const optimum = optima.find(({ name }) => name === problem.name)!;
  const { study } = askable(problem.car);
  const movables: readonly Movable[] = [
    ...plungeMovables(study.car),
    ...camberMovables(study.car),
    ...singlePivots(study.car),
  ];
  const movable = movables.find(({ id }) => id === problem.point)!;
  const task: MoveTask = {
    question: problem.question,
    movable,
    reach: { x: 0, y: 0, z: 0, ...problem.reach },
    travels: problem.travels,
    label: "",
    dimension: "length",
    wanted: 0,
    measure: (rows) => rangeOf(rows, PLACES[problem.question]),
  };

  it("is still the problem that was solved (else: reference/solve/rebuild.sh)", () => {
    for (const place of singlePivots(study.car).flatMap(({ points }) => points)) {
      const now = pointAt(study.car, place);
      const then = problem.points[place.path.replace("linkage.", "")]!;
      expect(Math.hypot(now.x - then.x, now.y - then.y, now.z - then.z)).toBeLessThan(1e-12);
    }
  });

  it("moves as the other program's linkage does", () => {
    expect(Math.abs(taskValue(task, study.car) - optimum.start)).toBeLessThan(SAME_MOTION);
    const there = offsetBy(study.car, movable, { x: 0, y: 0, z: 0, ...optimum.offset });
    expect(Math.abs(taskValue(task, there) - optimum.best)).toBeLessThan(SAME_MOTION);
  });

  it("leaves nothing better for a general optimiser to find", () => {
    expect(leastOffset(task, study.car)!.value).toBeLessThan(optimum.best + NOTHING_BETTER);
  });
});

describe.each([
  ["greasewood", "upperArm.inner"],
  ["catclaw", "links.toe.inner"],
  ["rabbitbrush", "trailingArm.outboardPivot"],
] as const)("%s, %s, on a fine grid", (name, point) => {
  const { study } = askable(name);
  const movable = [...camberMovables(study.car), ...singlePivots(study.car)].find(({ id }) => id === point)!;
  const reach = { x: 0.01, y: 0, z: 0.01 };
  const task: MoveTask = {
    question: "least-toe",
    movable,
    reach,
    travels: [-0.12, -0.08, -0.04, 0, 0.04, 0.08, 0.12],
    label: "",
    dimension: "angle",
    wanted: 0,
    measure: (rows) => rangeOf(rows, ROW.toe),
  };

  it("leaves nothing better to brute force", () => {
    let least = Number.POSITIVE_INFINITY;
    for (let i = -20; i <= 20; i += 1)
      for (let k = -20; k <= 20; k += 1)
        least = Math.min(least, taskValue(task, offsetBy(study.car, movable, { x: i * 0.0005, y: 0, z: k * 0.0005 })));
    expect(Number.isFinite(least)).toBe(true);
    expect(leastOffset(task, study.car)!.value).toBeLessThan(least + NOTHING_BETTER);
  });
});
