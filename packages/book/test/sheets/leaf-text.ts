import type { Primitive, TextPrimitive } from "@armwright/drawing";
import type { Leaf } from "../../src/paper/leaf.ts";

/** Every text of a sheet as it is printed. */
export const textsOf = (parts: readonly Primitive[]): readonly TextPrimitive[] =>
  parts.flatMap((part) => (part.shape === "text" ? [part] : part.shape === "group" ? textsOf(part.parts) : []));

/** Words that stand on one line of a sheet, from left to right; the lines from above to below. */
export function linesOf(leaf: Leaf): readonly (readonly string[])[] {
  const lines = new Map<number, TextPrimitive[]>();
  for (const text of textsOf(leaf.parts)) {
    const y = Math.round(text.at.y * 10);
    lines.set(y, [...(lines.get(y) ?? []), text]);
  }
  return [...lines.entries()]
    .sort(([a], [b]) => a - b)
    .map(([, texts]) => [...texts].sort((a, b) => a.at.x - b.at.x).map(({ text }) => text));
}

/** `15 13/16`, `−1/32`, `461.5`, `−0.5°` as a number; NaN for what is none. */
export function readNumber(printed: string): number {
  const plain = printed.replace(/[\u2009\u202f\u00a0]/g, " ").trim();
  const found = /^(−?)(?:(\d+(?:\.\d+)?)°?|(?:(\d+) )?(\d+)\/(\d+))$/.exec(plain);
  if (!found) return Number.NaN;
  const [, minus, number, whole, above, below] = found;
  const size = number === undefined ? Number(whole ?? 0) + Number(above) / Number(below) : Number(number);
  return minus === "−" ? -size : size;
}
