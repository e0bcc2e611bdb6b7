import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

let made: string | undefined;

/**
 * `@font-face` rules that carry the house's face with them: an SVG in an `<img>`, or opened on another machine, has no other
 * way to it, and without it a fraction is not set as one.
 */
export function faceRules(): string {
  made ??= [400, 500, 600].map(rule).join("");
  return made;
}

function rule(weight: number): string {
  const path = `@fontsource/national-park/files/national-park-latin-${weight}-normal.woff2`;
  const bytes = readFileSync(require.resolve(path)).toString("base64");
  return `@font-face{font-family:"National Park";font-weight:${weight};src:url(data:font/woff2;base64,${bytes}) format("woff2")}`;
}

const require = createRequire(import.meta.url);
