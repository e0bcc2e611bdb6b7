import type { Primitive } from "./primitive.ts";

/** A drawing put into the background: in pencil hairs on paper, without words, hatching or red. */
export const faded = (parts: readonly Primitive[]): Primitive[] => parts.flatMap(fade);

function fade(part: Primitive): readonly Primitive[] {
  if (part.shape === "group") return [{ ...part, parts: faded(part.parts) }];
  if (part.shape === "text" || part.ink === "grid") return [];
  if (part.shape === "line") return [{ ...part, ink: "pencil", weight: "hair" }];
  const { hatch: _, ...plain } = part;
  const fill = part.fill === "none" ? "none" : "paper";
  return [{ ...plain, fill, ink: part.ink === "none" ? "none" : "pencil", weight: "hair" }];
}
