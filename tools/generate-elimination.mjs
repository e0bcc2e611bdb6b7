// Writes packages/engine/src/linkage/five-link-step.ts: the five-link's Newton step with its 5 × 5 elimination, unrolled
// into local scalars (loops over small arrays cost two to three times as much).
// Run: node tools/generate-elimination.mjs && npx biome check --write packages/engine/src/linkage/five-link-step.ts
import { writeFileSync } from "node:fs";

const N = 5;
const rows = [0, 1, 2, 3, 4];
const lines = [];
const say = (text = "") => lines.push(`  ${text}`);
const m = (row, column) => `m${row}${column}`;

/** Solves for the right-hand side whose entries are named `${name}0`…, from the factors that the elimination left. */
function solve(name, outAt) {
  for (let p = 0; p < N; p += 1) for (let r = p + 1; r < N; r += 1) say(`${name}${r} -= f${r}${p} * ${name}${p};`);
  for (let r = N - 1; r >= 0; r -= 1) {
    const rest = rows.slice(r + 1).map((c) => ` - ${m(r, c)} * ${name}${c}`);
    say(`${name}${r} = (${name}${r}${rest.join("")}) * per${r};`);
  }
  for (const r of rows) say(`out[${outAt + r}] = ${name}${r};`);
}

for (const i of rows) {
  const k = 3 * i;
  const b = ["x", "y", "z"].map((axis, column) => {
    say(`const b${i}${axis} = arm[${k + column}]!;`);
    return `b${i}${axis}`;
  });
  ["x", "y", "z"].forEach((axis, row) => {
    const turned = b.map((part, column) => `t${3 * row + column} * ${part}`).join(" + ");
    say(`const r${i}${axis} = ${turned};`);
    say(`const d${i}${axis} = ${axis} + r${i}${axis} - inner[${k + row}]!;`);
  });
  // d·(ω×r) = ω·(r×d)
  const cross = (u, v) => `r${i}${u} * d${i}${v} - r${i}${v} * d${i}${u}`;
  const entries = [`d${i}x`, `d${i}y`, cross("y", "z"), cross("z", "x"), cross("x", "y")];
  entries.forEach((entry, c) => {
    say(`${i > 0 && c > 0 ? "let" : "const"} ${m(i, c)} = ${entry};`);
  });
  say(`let a${i} = halfSquare[${i}]! - 0.5 * (d${i}x * d${i}x + d${i}y * d${i}y + d${i}z * d${i}z);`);
}
say(`const close = ${rows.map((i) => `Math.abs(a${i}) < CLOSE_ENOUGH`).join(" && ")};`);
for (let p = 0; p < N; p += 1) {
  say(`if (!(Math.abs(${m(p, p)}) > LEAST_PIVOT)) return STEP.singular;`);
  say(`const per${p} = 1 / ${m(p, p)};`);
  for (let r = p + 1; r < N; r += 1) {
    say(`const f${r}${p} = ${m(r, p)} * per${p};`);
    for (let c = p + 1; c < N; c += 1) say(`${m(r, c)} -= f${r}${p} * ${m(p, c)};`);
  }
}
solve("a", 0);
say("if (!close) return STEP.far;");
say("// Rates by travel: the height's own column is the right-hand side.");
for (const i of rows) say(`let v${i} = -d${i}z;`);
solve("v", N);
say("// Second derivatives: −(|v|² + d·(ω×(ω×r))) of each spindle end, v its velocity.");
for (const i of rows) {
  say(`const c${i}x = v3 * r${i}z - v4 * r${i}y;`);
  say(`const c${i}y = v4 * r${i}x - v2 * r${i}z;`);
  say(`const c${i}z = v2 * r${i}y - v3 * r${i}x;`);
  say(`const e${i}x = v0 + c${i}x;`);
  say(`const e${i}y = v1 + c${i}y;`);
  say(`const e${i}z = 1 + c${i}z;`);
  const turning = [
    `d${i}x * (v3 * c${i}z - v4 * c${i}y)`,
    `d${i}y * (v4 * c${i}x - v2 * c${i}z)`,
    `d${i}z * (v2 * c${i}y - v3 * c${i}x)`,
  ];
  say(`let w${i} = -(e${i}x * e${i}x + e${i}y * e${i}y + e${i}z * e${i}z + ${turning.join(" + ")});`);
}
solve("w", 2 * N);
say("return STEP.close;");

const text = `// Written by tools/generate-elimination.mjs; do not edit by hand.
import type { FiveLinkConstants } from "./five-link-constants.ts";
import { AT as STATE_PLACES, type MotionState } from "./motion-state.ts";

// A local copy: its numbers are then constants to the compiler, where an imported object is looked up at run time.
const AT = STATE_PLACES;

/** How a step ended. Far: only the step is written. Singular: a pivot is too small and nothing is to be used. */
export const STEP = { far: 0, close: 1, singular: -1 } as const;
export type StepEnd = (typeof STEP)[keyof typeof STEP];

/** The lengths agree to this before the last step, as (L² − |d|²)/2, m². */
export const CLOSE_ENOUGH = 1e-11;
/** Below this a pivot (m or m²) is too small to divide by safely without an exchange of rows. */
const LEAST_PIVOT = 1e-5;

/**
 * One step of Newton's method from the state's rotation and wheel centre, its height held. Writes into \`out\`, five numbers
 * each (x and y of the wheel centre, rotation vector): the step, and where the lengths already are close, the first and
 * second derivative by travel. Gaussian elimination without exchange of rows.
 */
export function stepFiveLink(five: FiveLinkConstants, s: MotionState, out: Float64Array): StepEnd {
  const { inner, arm, halfSquare } = five;
${Array.from({ length: 9 }, (_, i) => `  const t${i} = s[AT.rotation + ${i}]!;`).join("\n")}
  const x = s[AT.wheelCentre]!;
  const y = s[AT.wheelCentre + 1]!;
  const z = s[AT.wheelCentre + 2]!;
${lines.join("\n")}
}
`;
writeFileSync(new URL("../packages/engine/src/linkage/five-link-step.ts", import.meta.url), text);
