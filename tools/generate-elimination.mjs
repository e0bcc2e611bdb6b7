// Writes packages/engine/src/linkage/eliminate-five.ts: Gaussian elimination of five equations with two right-hand sides,
// unrolled into local scalars (loops over small arrays cost two to three times as much). Run: node tools/generate-elimination.mjs
import { writeFileSync } from "node:fs";

const N = 5;
const RIGHT = 2;
const WIDTH = N + RIGHT;
const name = (row, column) => `m${row}${column}`;
const lines = [];
for (let r = 0; r < N; r += 1) {
  for (let c = 0; c < WIDTH; c += 1)
    lines.push(`  ${r < N && c < N && r > c ? "const" : "let"} ${name(r, c)} = m[${r * WIDTH + c}]!;`);
}
lines.push("  let factor = 0;", "  let size = 0;", "  let least = Number.POSITIVE_INFINITY;");
for (let p = 0; p < N; p += 1) {
  lines.push(`  size = ${name(p, p)} < 0 ? -${name(p, p)} : ${name(p, p)};`, "  if (!(size >= least)) least = size;");
  lines.push(`  const per${p} = 1 / ${name(p, p)};`);
  for (let r = p + 1; r < N; r += 1) {
    lines.push(`  factor = ${name(r, p)} * per${p};`);
    for (let c = p + 1; c < WIDTH; c += 1) lines.push(`  ${name(r, c)} -= factor * ${name(p, c)};`);
  }
}
lines.push("  if (!(least > leastAllowed)) return least;");
for (let k = N; k < WIDTH; k += 1) {
  for (let r = N - 1; r >= 0; r -= 1) {
    const rest = [];
    for (let c = r + 1; c < N; c += 1) rest.push(` - ${name(r, c)} * ${name(c, k)}`);
    lines.push(`  ${name(r, k)} = (${name(r, k)}${rest.join("")}) * per${r};`);
    lines.push(`  m[${r * WIDTH + k}] = ${name(r, k)};`);
  }
}
// What is never written again is a constant.
const body = lines.map((line) => {
  const declared = /^ {2}(?:let|const) (m\d\d) = /.exec(line);
  if (!declared) return line;
  const again = lines.some((other) => new RegExp(`^  ${declared[1]} (-=|=)`).test(other));
  return line.replace(/^ {2}(let|const)/, again ? "  let" : "  const");
});
const text = `// Written by tools/generate-elimination.mjs; do not edit by hand.

/** Row length of the matrix that eliminateFive takes: five coefficients, then two right-hand sides. */
export const FIVE_WIDTH = ${WIDTH};

/**
 * Gaussian elimination without exchange of rows. \`m\` holds five rows of FIVE_WIDTH; the two right-hand sides are replaced
 * by the solutions. Gives the smallest pivot's size; where that is not above \`leastAllowed\`, \`m\` is left as it was.
 */
export function eliminateFive(m: Float64Array, leastAllowed: number): number {
${body.join("\n")}
  return least;
}
`;
writeFileSync(new URL("../packages/engine/src/linkage/eliminate-five.ts", import.meta.url), text);
