import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { readCarDocument } from "../../packages/engine/dist/document/index.js";
import { type CornerModel, cornerModel } from "../../packages/engine/dist/landing/corner-model.js";
import { hangingStart } from "../../packages/engine/dist/landing/landing-start.js";
import { runCorner, STEP, STEP_SIZE, USUAL_STEPS } from "../../packages/engine/dist/landing/run-corner.js";
import { study } from "../../packages/engine/dist/study/study.js";
import { C_COMMAND } from "./c-program.js";
import { table, times } from "./table.js";

const ROUNDS = 31;
const RUNS_A_ROUND = 12;
const AIM = 1.3;
const SECONDS = 3;
const HEIGHT = 0.6;
/** Two programs that do the same sums in another order may choose steps that differ in the last bits. */
const ALIKE = 1e-9;

const at = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

/** 3 s of the demo car falling from 600 mm, against the same in C, in turn in one run; false where they do not agree. */
export function benchmarkLanding(): boolean {
  const model = demoModel();
  const start = hangingStart(model, HEIGHT);
  const path = new Float64Array(STEP_SIZE * 20_000);
  const run = () => runCorner(model.constants, null, start, SECONDS, USUAL_STEPS, path);
  const program = compiled(model, start);
  let ours = Number.POSITIVE_INFINITY;
  let theirs = Number.POSITIVE_INFINITY;
  let answer: readonly number[] = [];
  for (let i = 0; i < 200; i += 1) run();
  for (let round = 0; round < ROUNDS; round += 1) {
    for (let i = 0; i < RUNS_A_ROUND; i += 1) {
      const from = performance.now();
      run();
      ours = Math.min(ours, (performance.now() - from) / 1000);
    }
    if (!program) continue;
    const { stdout } = spawnSync(program, [at("build/benchmark/landing.bin"), String(RUNS_A_ROUND)], {
      encoding: "utf8",
    });
    answer = stdout.trim().split(" ").map(Number);
    theirs = Math.min(theirs, answer[6] ?? Number.NaN);
  }
  const { steps } = run();
  const column = (place: number): number =>
    Array.from({ length: steps }, (_, i) => path[i * STEP_SIZE + place]!).reduce((a, b) => Math.max(a, b));
  const last = (steps - 1) * STEP_SIZE;
  const mine = [steps, path[last + STEP.body]!, path[last + STEP.wheel]!, column(11), column(12), column(14)];
  const isAlike = !program || mine.every((value, i) => Math.abs(value / answer[i]! - 1) < ALIKE);
  console.log(
    `\nLanding: ${SECONDS} s of the demo car falling from ${HEIGHT * 1000} mm, milliseconds; C: ${C_COMMAND}`,
  );
  const ms = (seconds: number): string => (Number.isFinite(seconds) ? (seconds * 1000).toFixed(3) : "-");
  console.log(
    table(
      ["steps", "C", "kernel", "to C", "same motion"],
      [
        [
          String(steps),
          ms(theirs),
          ms(ours),
          program ? times(ours / theirs) : "-",
          program ? (isAlike ? "yes" : "NO") : "-",
        ],
      ],
    ),
  );
  if (program) {
    console.log(
      `${ours / theirs <= AIM ? "met    " : "NOT MET"}  landing to C at most ${times(AIM)}: ${times(ours / theirs)}`,
    );
  }
  return isAlike;
}

function demoModel(): CornerModel {
  const reading = readCarDocument(readFileSync(at("examples/saltbush.car.json"), "utf8"));
  if (!reading.ok) throw new Error("the demo car does not read");
  const found = cornerModel(study(reading.car));
  if (!found.ok) throw new Error(`the demo car cannot land: ${found.need}`);
  return found.model;
}

/** The C program with this corner's constants beside it; null without a compiler. */
function compiled(model: CornerModel, start: ReturnType<typeof hangingStart>): string | null {
  const program = at("build/benchmark/landing");
  mkdirSync(at("build/benchmark"), { recursive: true });
  const [compiler, ...options] = C_COMMAND.split(" ");
  const done = spawnSync(compiler!, [...options, at("benchmarks/c/landing.c"), "-o", program, "-lm"]);
  if (done.error || done.status !== 0) return null;
  const head = [
    start.body,
    start.bodySpeed,
    start.wheel,
    start.wheelSpeed,
    SECONDS,
    USUAL_STEPS.error,
    USUAL_STEPS.longest,
  ];
  writeFileSync(at("build/benchmark/landing.bin"), Float64Array.from([...head, ...model.constants]));
  return program;
}
