import { chartCycle, drawChart, drawRear, drawTape, heightOf, type Primitive } from "@armwright/drawing";
import { type Car, type Study, studyMotion, type UnitSystem } from "@armwright/engine";
import { CHART_TITLES } from "./board/chart-titles.ts";
import { CHART_GAP, CHART_WIDTH, HEAD_GAP, layBoard, NUMERALS, TAPE_WIDTH } from "./board/layout.ts";
import { paint } from "./board/paint.ts";
import { footOf, placeRear, placeView } from "./board/place-views.ts";
import { shownIn } from "./board/shown-in.ts";
import { chartIds } from "./sheet/chart-ids.ts";
import { solvedAt } from "./store/position.ts";
import { hasPreferences, keptPreferences } from "./store/preferences.ts";
import { tapeEnds } from "./store/travel.ts";

/**
 * The car, the tape and the charts, painted before the rest of the page is even fetched; the bench takes their place. False
 * where they could not be: the rest then says why.
 */
export function paintFirst(root: HTMLElement, car: Car): boolean {
  try {
    const kept = keptPreferences();
    const units = hasPreferences() ? kept.units : car.units;
    // Nothing that is drawn asks for what is judged, and what judges is large.
    const made = studyMotion(car) as Study;
    if (matchMedia("(max-width: 719px)").matches) paintPhone(root, made, units);
    else {
      const isNarrow = matchMedia("(max-width: 1199px)").matches;
      paintDesktop(root, made, units, isNarrow ? [] : chartIds(made, kept.step, null));
    }
    return true;
  } catch {
    root.replaceChildren();
    return false;
  }
}

function paintDesktop(root: HTMLElement, study: Study, units: UnitSystem, charts: readonly string[]): void {
  const page = add(root, charts.length === 0 ? "desktop narrow" : "desktop");
  add(page, "", "aside");
  const board = add(add(page, "board", "main"), "board-area");
  for (const name of ["sheet", "stops", "findings"]) add(page, name, "section");
  const size = { width: board.clientWidth, height: board.clientHeight };
  const solved = solvedAt(study, 0);
  const shown = shownIn(study, units);
  const { droop, bump } = tapeEnds(study);
  const range = { lowest: droop, highest: bump };
  const { tape, scale, chartsWidth, room } = layBoard(shown, size, charts.length, range);
  if (!solved || room.width < 80) return;
  put(board, 0, { width: TAPE_WIDTH, height: size.height }, drawTape(shown, 0, tape, { range }).parts);
  const sheet = placeRear(study, room, heightOf(scale, 0), footOf(room.height));
  put(board, TAPE_WIDTH, room, drawRear(shown, solved.position, sheet).parts);
  const cycle = chartCycle(shown, scale);
  const drawn = charts.map((id, index) =>
    drawChart(
      shown,
      id.split("+"),
      { x: NUMERALS + index * (CHART_WIDTH + CHART_GAP), y: 0, width: CHART_WIDTH, height: size.height },
      {
        scale,
        travel: 0,
        cycle,
        room: CHART_WIDTH + CHART_GAP - HEAD_GAP,
        numerals: index === 0,
        ...(CHART_TITLES[id] !== undefined && { title: CHART_TITLES[id] }),
      },
    ),
  );
  put(
    board,
    size.width - chartsWidth,
    { width: chartsWidth, height: size.height },
    drawn.flatMap(({ parts }) => parts),
  );
}

function paintPhone(root: HTMLElement, study: Study, units: UnitSystem): void {
  const page = add(root, "phone");
  add(page, "bar", "header");
  const board = add(add(page, "", "main"), "board-area");
  const solved = solvedAt(study, 0);
  if (!solved) return;
  const size = { width: board.clientWidth - 118, height: board.clientHeight - 64 };
  const shown = shownIn(study, units);
  const sheet = placeView("rear", study, size);
  put(board, 0, size, drawRear(shown, solved.position, sheet, { dimensions: false, notes: false, title: false }).parts);
  const tape = { x: 0, y: 0, width: 118, height: board.clientHeight };
  put(board, size.width, tape, drawTape(shown, 0, tape, { bladeWidth: 44, loupe: false, words: false }).parts);
}

function put(
  board: HTMLElement,
  left: number,
  size: { readonly width: number; readonly height: number },
  parts: readonly Primitive[],
): void {
  const place = add(board, "place");
  place.style.left = `${left}px`;
  const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  svg.setAttribute("width", String(size.width));
  svg.setAttribute("height", String(size.height));
  place.append(svg);
  paint(svg, parts, 1);
}

function add(parent: HTMLElement, className: string, tag = "div"): HTMLElement {
  const element = document.createElement(tag);
  element.className = className;
  parent.append(element);
  return element;
}
