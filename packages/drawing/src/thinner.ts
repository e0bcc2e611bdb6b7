import type { Primitive, Weight } from "./primitive.ts";

const LIGHTER: Partial<Record<Weight, Weight>> = {
  outline: "visible",
  rim: "curve",
  visible: "thin",
  ghost: "thin",
  thin: "hair",
};

/** The same in lighter lines, for a view that is drawn small. */
export function thinner(parts: readonly Primitive[]): readonly Primitive[] {
  return parts.map((part) => {
    if (part.shape === "text") return part;
    if (part.shape === "group") return { ...part, parts: thinner(part.parts) };
    return { ...part, weight: LIGHTER[part.weight] ?? part.weight };
  });
}
