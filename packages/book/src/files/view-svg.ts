import { svgText } from "@armwright/drawing";
import { positionOf, type Study, solveAt } from "@armwright/engine";
import { carView, type ViewName } from "../paper/car-view.ts";
import { faceRules } from "../paper/face-rules.ts";
import { WHITE_PAPER } from "../paper/leaf-svg.ts";
import { PAGE_SIZES, type PageSize } from "../paper/page-size.ts";

const WORDS: Readonly<Record<ViewName, string>> = {
  rear: "from behind",
  top: "from above",
  left: "from the left",
};

/** One view at ride height as an SVG in mm, as large as a page lying on its side takes, black on white. */
export function viewSvg(study: Study, view: ViewName, paper: PageSize["name"]): string {
  const solved = solveAt(study.corner, 0);
  if (!solved) return "";
  const page = PAGE_SIZES[paper];
  const { drawing, ratio } = carView(
    study,
    positionOf(study.corner, solved.state),
    view,
    page.height - 20,
    page.width - 20,
  );
  const label = `${study.car.name} ${WORDS[view]}, 1 : ${ratio}`;
  return svgText(drawing, { theme: "light", label, faces: `${faceRules()}${WHITE_PAPER}` });
}
