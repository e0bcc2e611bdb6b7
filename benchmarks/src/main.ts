import { cpus } from "node:os";
import { type Corner, makeCorner, writeRow } from "../../packages/engine/dist/cycle/corner.js";
import { moveThrough, stations } from "../../packages/engine/dist/cycle/cycle.js";
import { designState } from "../../packages/engine/dist/linkage/motion-state.js";
import { study } from "../../packages/engine/dist/study/study.js";
import { C_COMMAND, CProgram, compileC } from "./c-program.js";
import { BUMP, benchmarkCar, DROOP, POSITIONS } from "./cars.js";
import { constantsForC, KINDS_IN_C } from "./constants.js";
import { benchmarkLanding } from "./landing.js";
import { sameTasks, timeLibrary } from "./library.js";
import { LEAST_SAMPLE, measure, SAMPLES, timed, type Variant } from "./measure.js";
import { benchmarkMounts } from "./mounts.js";
import { microseconds, table, times } from "./table.js";

const AIMS = { kernelsToC: 1.3, faceToC: 2, multibodyToKernel: 100 };

const travels = stations(DROOP, BUMP, POSITIONS);
const corners = KINDS_IN_C.map((kind) => ({ kind, car: benchmarkCar(kind), corner: makeCorner(benchmarkCar(kind)) }));

/** The flat kernels: solve and write each position into one row that is used again. */
function flatCycle(corner: Corner): () => void {
  const design = designState();
  const state = designState();
  const row = new Float64Array(corner.width);
  return () => {
    state.set(design);
    for (let i = 0; i < travels.length; i += 1) {
      corner.mechanism.solve(travels[i]!, state);
      writeRow(corner, state, row);
    }
  };
}

/** Every number of every position counts, each place with its own weight, as in c/main.c. */
function checksum(corner: Corner): { readonly sum: number; readonly iterations: number } {
  const state = designState();
  const row = new Float64Array(corner.width);
  let sum = 0;
  let iterations = 0;
  travels.forEach((travel, i) => {
    iterations += corner.mechanism.solve(travel, state);
    writeRow(corner, state, row);
    row.forEach((value, k) => {
      sum += value * (1 + ((i * 7 + k * 3) % 11));
    });
  });
  return { sum, iterations };
}

const missing = compileC();
const programs = missing
  ? []
  : corners.map(({ kind, corner }) => ({ kind, program: new CProgram(kind, constantsForC(corner, travels)) }));
const tasks = sameTasks();

const variants: Variant[] = [
  ...corners.flatMap(({ kind, car, corner }) => [
    timed(`${kind} kernels`, flatCycle(corner)),
    timed(`${kind} face`, () => moveThrough(corner, travels)),
    timed(`${kind} made`, () => makeCorner(car)),
    timed(`${kind} study`, () => study(car)),
  ]),
  ...programs.map(({ kind, program }) => ({ name: `${kind} c`, run: (count: number) => program.time(count) })),
  ...tasks.map(({ kind, sweep }) => timed(`${kind} same task`, sweep)),
];
const least = await measure(variants);
const seconds = (name: string): number => least.get(name) ?? Number.NaN;
const orDash = (value: number, show: (value: number) => string): string => (Number.isNaN(value) ? "-" : show(value));

console.log(`Node ${process.version}, ${cpus()[0]?.model ?? "unknown processor"}`);
console.log(`Least of ${SAMPLES} samples of at least ${LEAST_SAMPLE * 1000} ms each, all variants in turn.\n`);
console.log(`Cycle of ${POSITIONS} positions with all of a row, microseconds; C: ${missing ?? C_COMMAND}`);
console.log(
  table(
    ["kind", "numbers", "C", "kernels", "to C", "public face", "to C", "make corner", "whole study"],
    corners.map(({ kind, corner }) => [
      kind,
      String(POSITIONS * corner.width),
      orDash(seconds(`${kind} c`), microseconds),
      microseconds(seconds(`${kind} kernels`)),
      orDash(seconds(`${kind} kernels`) / seconds(`${kind} c`), times),
      microseconds(seconds(`${kind} face`)),
      orDash(seconds(`${kind} face`) / seconds(`${kind} c`), times),
      microseconds(seconds(`${kind} made`)),
      orDash(seconds(`${kind} study`), microseconds),
    ]),
  ),
);

let allAgree = true;
if (programs.length > 0) {
  console.log("\nChecksums of all rows");
  const rows: string[][] = [];
  for (const { kind, program } of programs) {
    const ours = checksum(corners.find((entry) => entry.kind === kind)!.corner);
    const theirs = await program.sum();
    const off = Math.abs(theirs.sum / ours.sum - 1);
    // Twelve digits alike.
    const agree = off < 1e-12;
    allAgree = allAgree && agree;
    rows.push([
      kind,
      ours.sum.toPrecision(15),
      theirs.sum.toPrecision(15),
      off.toExponential(1),
      agree ? "yes" : "NO",
      `${ours.iterations} / ${theirs.iterations}`,
    ]);
    program.close();
  }
  console.log(table(["kind", "engine", "C", "off by", "12 digits alike", "iterations"], rows));
}

const library = timeLibrary();
if (typeof library === "string") console.log(`\n${library}`);
else {
  console.log(
    "\nPosition solve, microseconds a position, on the library's own corners: 41 positions over ±300 mm and back",
  );
  console.log(
    table(
      ["kind", "library", "off by", "kernel", "off by", "library to kernel", "way of the library"],
      library.map(({ kind, perPosition, worstPoseError, way }) => {
        const task = tasks.find((entry) => entry.kind === kind)!;
        const ours = seconds(`${kind} same task`) / task.solves;
        return [
          kind,
          microseconds(perPosition),
          worstPoseError.toExponential(0),
          microseconds(ours),
          task.worstPoseError.toExponential(0),
          times(perPosition / ours),
          way,
        ];
      }),
    ),
  );
}

console.log("\nAims");
const judge = (text: string, aim: number, worst: number, isMet: boolean): void => {
  if (!Number.isNaN(worst)) console.log(`${isMet ? "met    " : "NOT MET"}  ${text} ${times(aim)}: ${times(worst)}`);
};
const worstToC = (part: string): number =>
  Math.max(...corners.map(({ kind }) => seconds(`${kind} ${part}`) / seconds(`${kind} c`)));
judge("kernels to C at most", AIMS.kernelsToC, worstToC("kernels"), worstToC("kernels") <= AIMS.kernelsToC);
judge("public face to C at most", AIMS.faceToC, worstToC("face"), worstToC("face") <= AIMS.faceToC);
if (typeof library !== "string") {
  const ratios = library
    .filter(({ start }) => start === "neighbour")
    .map(({ kind, perPosition }) => {
      const task = tasks.find((entry) => entry.kind === kind)!;
      return (perPosition * task.solves) / seconds(`${kind} same task`);
    });
  const worst = Math.min(...ratios);
  judge(
    "library, from the neighbouring position, to kernel at least",
    AIMS.multibodyToKernel,
    worst,
    worst >= AIMS.multibodyToKernel,
  );
}
const mountsAgree = await benchmarkMounts();
allAgree = benchmarkLanding() && allAgree && mountsAgree;
if (!allAgree) {
  console.error("\nThe C program and the engine do not agree: the times above do not count.");
  process.exitCode = 1;
}
