import type { PathStep, Primitive, Spot } from "@armwright/drawing";

/** A drawing carried to its place on the paper, mm. */
export function moved(primitive: Primitive, dx: number, dy: number): Primitive {
  const shift = ({ x, y }: Spot): Spot => ({ x: x + dx, y: y + dy });
  switch (primitive.shape) {
    case "line":
    case "area":
      return { ...primitive, path: primitive.path.map((step) => movedStep(step, shift)) };
    case "text":
      return { ...primitive, at: shift(primitive.at) };
    case "group":
      return {
        ...primitive,
        parts: primitive.parts.map((part) => moved(part, dx, dy)),
        ...(primitive.clip && { clip: { ...primitive.clip, ...shift(primitive.clip) } }),
      };
  }
}

function movedStep(step: PathStep, shift: (spot: Spot) => Spot): PathStep {
  switch (step.to) {
    case "close":
      return step;
    case "curve":
      return { to: "curve", c1: shift(step.c1), c2: shift(step.c2), at: shift(step.at) };
    default:
      return { to: step.to, at: shift(step.at) };
  }
}
