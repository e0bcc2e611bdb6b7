import { svgText } from "@armwright/drawing";
import { faceRules } from "./face-rules.ts";
import { type Leaf, PEN } from "./leaf.ts";

/** A sheet as an SVG of its true size, in its own colours and its own face whatever the page around it looks like. */
export const leafSvg = ({ id, title, page, parts }: Leaf): string =>
  svgText(
    {
      sheet: { width: page.width, height: page.height, scale: 1, origin: { x: 0, y: 0 }, pen: PEN },
      parts,
      handles: [],
    },
    { prefix: `sheet-${id}`, theme: "light", label: title, faces: `${faceRules()}${WHITE_PAPER}` },
  );

/** A printer's paper is white: what the drawing fills with paper, and the halo round words, are so too. */
export const WHITE_PAPER = "svg{--paper:#fff!important}";
