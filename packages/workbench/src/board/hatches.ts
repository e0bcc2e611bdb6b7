import { HATCHES, type Hatch, hatchId } from "@armwright/drawing";
import { HATCH_PREFIX } from "./paint.ts";

const SVG = "http://www.w3.org/2000/svg";

/** The patterns that every drawing on the page refers to, in one hidden svg. */
export function addHatches(body: HTMLElement): void {
  if (document.getElementById(hatchId(HATCH_PREFIX, "cut"))) return;
  const svg = make("svg", { width: "0", height: "0", class: "hatches", "aria-hidden": "true" });
  const definitions = make("defs", {});
  for (const hatch of Object.keys(HATCHES) as Hatch[]) {
    const { pitch, turn, width, ink } = HATCHES[hatch];
    const pattern = make("pattern", {
      id: hatchId(HATCH_PREFIX, hatch),
      width: String(pitch),
      height: String(pitch),
      patternUnits: "userSpaceOnUse",
      patternTransform: `rotate(${turn})`,
    });
    pattern.append(
      make("line", { x1: "0", y1: "0", x2: "0", y2: String(pitch), class: `i-${ink}`, "stroke-width": String(width) }),
    );
    definitions.append(pattern);
  }
  svg.append(definitions);
  body.append(svg);
}

function make(tag: string, attributes: Readonly<Record<string, string>>): SVGElement {
  const element = document.createElementNS(SVG, tag) as SVGElement;
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  return element;
}
