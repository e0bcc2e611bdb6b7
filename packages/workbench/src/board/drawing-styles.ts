import { DRAWING_CSS } from "@armwright/drawing";

/** The drawings' own rules, put on the page as a sheet of their own: no inline style, which the page's policy refuses. */
export function addDrawingStyles(): void {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(DRAWING_CSS);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
}
