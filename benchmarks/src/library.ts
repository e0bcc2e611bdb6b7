import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Linkage } from "../../packages/engine/dist/car/car.js";
import type { Vec3 } from "../../packages/engine/dist/geometry/vec3.js";
import type { Mechanism } from "../../packages/engine/dist/linkage/kind.js";
import { kindOf } from "../../packages/engine/dist/linkage/kinds.js";
import { AT, designState } from "../../packages/engine/dist/linkage/motion-state.js";

const at = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

/** What the multibody library's fastest position solve takes on one corner. */
export interface LibraryTiming {
  readonly kind: string;
  /** From the neighbouring position, which the aim is set against, or from a polynomial through the last ones. */
  readonly start: "neighbour" | "extrapolated";
  readonly way: string;
  /** s */
  readonly perPosition: number;
  /** m and rad */
  readonly worstPoseError: number;
}

/** Times the library with its own program; a line that says what is missing where it cannot. */
export function timeLibrary(): readonly LibraryTiming[] | string {
  const program = at("build/multibody/cycle");
  if (!existsSync(program)) {
    return "The multibody library is left out: build/multibody/cycle is missing (bash reference/multibody/rebuild.sh).";
  }
  const done = spawnSync(program, ["--time", at("reference/multibody/cars.txt")], { encoding: "utf8" });
  if (done.status !== 0) return `The multibody library is left out: its program failed.\n${done.stderr}`;
  const lines = done.stdout
    .trim()
    .split("\n")
    .map((line) => JSON.parse(line));
  return lines.map(({ kind, start, way, microsecondsPerPosition, worstPoseError }) => ({
    kind,
    start,
    way,
    perPosition: microsecondsPerPosition * 1e-6,
    worstPoseError,
  }));
}

/** A corner of the library's own, solved by the engine in the same order: up through ±300 mm in 41 positions and back. */
export interface SameTask {
  readonly kind: string;
  readonly solves: number;
  sweep(): void;
  /** Largest difference from the library's tight poses, m and rad. */
  readonly worstPoseError: number;
}

interface ReferenceCar {
  readonly kind: string;
  readonly geometry: string;
  readonly linkage: Linkage;
  readonly wheelCentre: Vec3;
  readonly positions: readonly { readonly travel: number; readonly wheelCentre: Vec3; readonly rotation: number[] }[];
}

const POSITIONS = 41;
const RANGE = 0.3;

export function sameTasks(): readonly SameTask[] {
  const file = at("reference/multibody/cycle.json");
  if (!existsSync(file)) return [];
  const cars: readonly ReferenceCar[] = JSON.parse(readFileSync(file, "utf8")).cars;
  return cars
    .filter(({ kind, geometry }) => geometry === "nice" && kind !== "trailing-arm")
    .map((car) => {
      const mechanism = kindOf(car.linkage).mechanism(car.linkage, car.wheelCentre);
      const state = designState();
      const travels = Array.from({ length: POSITIONS }, (_, i) => -RANGE + (i * 2 * RANGE) / (POSITIONS - 1));
      const order = [...travels.slice(1), ...travels.slice(0, -1).reverse()];
      return {
        kind: car.kind,
        solves: order.length,
        worstPoseError: worstPoseError(car, mechanism),
        sweep: () => {
          for (let i = 0; i < order.length; i += 1) mechanism.solve(order[i]!, state);
        },
      };
    });
}

function worstPoseError(car: ReferenceCar, mechanism: Mechanism): number {
  const state = designState();
  return Math.max(
    ...car.positions.map(({ travel, wheelCentre, rotation }) => {
      if (mechanism.solve(travel, state) < 0) throw new Error(`${car.kind}: no position at ${travel} m`);
      const turn = Math.hypot(...rotation.map((value, i) => value - state[AT.rotation + i]!)) / Math.SQRT2;
      const { x, y, z } = wheelCentre;
      const shift = Math.hypot(...[x, y, z].map((value, i) => value - state[AT.wheelCentre + i]!));
      return Math.max(turn, shift);
    }),
  );
}
