import { spawnSync } from "node:child_process";
import { once } from "node:events";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { Worker } from "node:worker_threads";
import { makeCorner } from "../../packages/engine/dist/cycle/corner.js";
import { readCarDocument } from "../../packages/engine/dist/document/index.js";
import { trialOf } from "../../packages/engine/dist/mounts/candidate.js";
import { defaultRequest } from "../../packages/engine/dist/mounts/default-request.js";
import { USUAL_EYE_WIDTH } from "../../packages/engine/dist/mounts/eye-limit.js";
import { findMounts } from "../../packages/engine/dist/mounts/find-mounts.js";
import { makeSink, scanLower } from "../../packages/engine/dist/mounts/scan.js";
import { makeSearch, type Search } from "../../packages/engine/dist/mounts/search.js";
import { C_COMMAND } from "./c-program.js";
import { table, times } from "./table.js";

const ROUNDS = 15;
const AIMS = { perSecondOnTwo: 100e6, second: 1.7 };
const CORES = ["segment", "box", "half-space", "disc"];
const at = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

/** The demo car with its own shock and keep-outs, on the grid that a builder gets and on one twice as fine. */
export async function benchmarkMounts(): Promise<boolean> {
  const reading = readCarDocument(readFileSync(at("examples/saltbush.car.json"), "utf8"));
  if (!reading.ok || !reading.car.shock) throw new Error("the demo car does not read");
  const { car } = reading;
  const { shortest, longest, diameter } = reading.car.shock;
  const shock = { name: "own", shortest, longest, bodyDiameter: diameter, springDiameter: 0, misalignmentLimit: 0.3 };
  const rows: string[][] = [];
  let agree = true;
  const reached: { readonly of: string; readonly perSecond: number; readonly second: number }[] = [];
  for (const [parts, hasWrench] of [
    [2, true],
    [4, false],
    [4, true],
  ] as const) {
    const corner = makeCorner(car);
    const asked = defaultRequest(corner, [shock], 0.0254 / parts);
    const { wrench, ...others } = asked.requirements;
    const request = { ...asked, requirements: hasWrench && wrench ? { ...others, wrench } : others };
    const search = makeSearch(corner, request);
    const workers = [0, 1].map(
      (part) =>
        new Worker(new URL("./mounts-worker.js", import.meta.url), { workerData: { car, request, part, parts: 2 } }),
    );
    await Promise.all(workers.map((worker) => once(worker, "message")));
    const program = compiled(search);
    let one = Number.POSITIVE_INFINITY;
    let two = Number.POSITIVE_INFINITY;
    let c = Number.POSITIVE_INFINITY;
    let sums = "";
    for (let round = 0; round < ROUNDS; round += 1) {
      one = Math.min(
        one,
        seconds(() => scanAll(search)),
      );
      const start = performance.now();
      for (const worker of workers) worker.postMessage("go");
      await Promise.all(workers.map((worker) => once(worker, "message")));
      two = Math.min(two, (performance.now() - start) / 1000);
      if (!program) continue;
      const [feasible, sum, least] = spawnSync(program, [at("build/benchmark/mounts.bin"), "1"], { encoding: "utf8" })
        .stdout.trim()
        .split(" ");
      c = Math.min(c, Number(least));
      sums = `${feasible} ${sum}`;
    }
    await Promise.all(workers.map((worker) => worker.terminate()));
    const count = search.lower.length * search.upper.x.length;
    const ours = checksum(search);
    agree = agree && (!program || sums === ours);
    const whole = seconds(() => findMounts(corner, request));
    if (parts === 4)
      reached.push({
        of: hasWrench ? "with room for a wrench" : "without a wrench",
        perSecond: count / two,
        second: one / two,
      });
    rows.push([
      `1/${parts} in`,
      hasWrench ? "yes" : "no",
      String(count),
      ours.split(" ")[0]!,
      million(count / c),
      million(count / one),
      million(count / two),
      times(one / two),
      times(c / one),
      program ? (sums === ours ? "yes" : "NO") : "-",
      whole.toFixed(3),
    ]);
  }
  console.log(
    "\nMount search, million candidates a second; one candidate: an upper and a lower mount judged over the whole travel.",
  );
  console.log(`Candidates that are skipped by the row count too. C: a plain pruned loop, ${C_COMMAND}, one core.`);
  console.log(
    table(
      [
        "grid",
        "wrench",
        "candidates",
        "fit",
        "C",
        "one worker",
        "two",
        "second brings",
        "C to one",
        "same set",
        "findMounts, s",
      ],
      rows,
    ),
  );
  for (const { of, perSecond, second } of reached) {
    console.log(
      `${perSecond >= AIMS.perSecondOnTwo ? "met    " : "NOT MET"}  ${of}, at least ${million(AIMS.perSecondOnTwo)} million a second on two: ${million(perSecond)}`,
    );
    console.log(
      `${second >= AIMS.second ? "met    " : "NOT MET"}  ${of}, the second worker brings at least ${times(AIMS.second)}: ${times(second)}`,
    );
  }
  return agree;
}

const million = (perSecond: number): string => (perSecond / 1e6).toFixed(1);

function seconds(action: () => unknown): number {
  const start = performance.now();
  action();
  return (performance.now() - start) / 1000;
}

function scanAll(search: Search) {
  const sink = makeSink(search);
  for (let lower = 0; lower < search.lower.length; lower += 1) scanLower(search, 0, lower, sink);
  return sink;
}

/** As in c/mounts.c: count and weighted sum over every candidate that fits. */
function checksum(search: Search): string {
  const { lower, upper } = scanAll(search);
  let sum = 0;
  lower.forEach((j, n) => {
    const key = j * search.upper.x.length + upper[n]!;
    sum += (key + 1) * (1 + (key % 97));
  });
  return `${lower.length} ${sum}`;
}

/** Compiles the C program and writes its numbers; null where there is no compiler. */
function compiled(search: Search): string | null {
  mkdirSync(at("build/benchmark"), { recursive: true });
  const program = at("build/benchmark/mounts");
  const [compiler, ...options] = C_COMMAND.split(" ");
  if (spawnSync(compiler!, [...options, at("benchmarks/c/mounts.c"), "-o", program, "-lm"]).status !== 0) return null;
  const trials = search.lower.map((lower) => trialOf(search, search.request.shocks[0]!, lower));
  const { most, least, stroke, cosLean, sinEye, obstacles, last, ride, request } = trials[0]!;
  const { strokeUsed, motionRatio, mayFall, wrench } = request.requirements;
  const start = 0.5 * (search.request.shocks[0]!.eyeWidth ?? USUAL_EYE_WIDTH) + (wrench?.tab ?? 0);
  const looks = { ride: [ride, ride], droop: [0, 0], either: [ride, 0] }[wrench?.at ?? "ride"];
  const { x, y, z } = search.upper;
  const numbers = [
    ...[last + 1, ride, x.length, trials.length, obstacles.length],
    ...[strokeUsed.least, strokeUsed.most, motionRatio.least, motionRatio.most, mayFall],
    ...[most, least, stroke, cosLean, sinEye],
    // No radius: no room for a wrench is asked for.
    ...[wrench?.radius ?? -1, start, start + (wrench?.length ?? 0), ...looks],
    ...Array.from(x, (_, i) => [x[i]!, y[i]!, z[i]!]).flat(),
    ...obstacles.flatMap(({ core, stride, discRadius, discHalfWidth, radius, data }) => [
      ...[CORES.indexOf(core), stride, discRadius, discHalfWidth, radius, data.length],
      ...data,
    ]),
    ...trials.flatMap(({ path, needs }) => [
      ...[...path.at, ...path.velocity, ...path.bolt],
      ...[path.upperBolt.x, path.upperBolt.y, path.upperBolt.z, ...needs],
      // At the lower bolt the tubes of the arm that carries it are left out.
      ...obstacles.map(({ body }) => Number(body === null || path.on === "spindle" || body !== path.on)),
    ]),
  ];
  writeFileSync(at("build/benchmark/mounts.bin"), Float64Array.from(numbers));
  return program;
}
