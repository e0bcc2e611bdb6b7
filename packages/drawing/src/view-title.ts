import { rectangle, spot } from "./path.ts";
import { grown } from "./placement.ts";
import type { AreaPrimitive, TextPrimitive } from "./primitive.ts";
import { patch, text } from "./sketch.ts";
import { boxOfText } from "./text-size.ts";
import { titleOf, type View } from "./view.ts";

/** A view's name in its corner, on paper of its own: whatever runs through that corner gives way to it. */
export function viewTitle(view: View, isMirrored: boolean | undefined, size: "label" | "text", pen: number) {
  const at = size === "text" ? spot(6 * pen, 18 * pen) : spot(4 * pen, 16 * pen);
  const words: TextPrimitive = text("title", at, titleOf(view.name, isMirrored), { size, halo: "paper" });
  const { x, y, width, height } = grown(boxOfText(words, pen), pen);
  const paper: AreaPrimitive = patch("title", rectangle(x, y, width, height), { fill: "paper" });
  return { parts: [paper, words] as const, box: { x, y, width, height } };
}
