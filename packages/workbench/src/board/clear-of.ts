import { type Box, boxOfText, overlap, type Primitive, type Spot } from "@armwright/drawing";

/** The parts of a drawing but for dimensions and notes that would run under something laid over it. */
export function clearOf(parts: readonly Primitive[], covered: Box): readonly Primitive[] {
  return parts.flatMap((part): readonly Primitive[] => {
    if (part.shape === "text" && overlap(boxOfText(part, 1), covered)) return [];
    if (part.shape !== "group") return [part];
    if (part.layer === "dimension" || part.layer === "note") {
      return spotsOf(part).some((spot) => isIn(spot, covered)) ? marksOf(part.parts, covered) : [part];
    }
    return [{ ...part, parts: clearOf(part.parts, covered) }];
  });
}

/** What is in trouble keeps the ring on its spot, even where its words have no room. */
const marksOf = (parts: readonly Primitive[], covered: Box): readonly Primitive[] =>
  parts.filter(
    (part) =>
      part.shape === "area" &&
      part.layer === "trouble" &&
      part.fill === "none" &&
      !spotsOf(part).some((spot) => isIn(spot, covered)),
  );

const isIn = ({ x, y }: Spot, { x: left, y: top, width, height }: Box): boolean =>
  x > left && x < left + width && y > top && y < top + height;

function spotsOf(part: Primitive): readonly Spot[] {
  switch (part.shape) {
    case "group":
      return part.parts.flatMap(spotsOf);
    case "text":
      return [part.at];
    default:
      return part.path.flatMap((step) => (step.to === "close" ? [] : [step.at]));
  }
}
