import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { sfntOf } from "./sfnt.ts";

/** The faces of the paper: the house's own, and one that has every sign of the trade. */
export interface Fonts {
  readonly regular: Uint8Array;
  readonly medium: Uint8Array;
  readonly bold: Uint8Array;
  /** Signs that the house's face lacks: the diameter sign, arrows, Greek. */
  readonly signs: Uint8Array;
}

let read: Fonts | undefined;

/** Read once, from the packages that bring them (both free to embed: OFL-1.1, Bitstream Vera terms). */
export function fonts(): Fonts {
  read ??= {
    regular: sfntOf(file("@fontsource/national-park/files/national-park-latin-400-normal.woff")),
    medium: sfntOf(file("@fontsource/national-park/files/national-park-latin-500-normal.woff")),
    bold: sfntOf(file("@fontsource/national-park/files/national-park-latin-600-normal.woff")),
    signs: file("dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf"),
  };
  return read;
}

const require = createRequire(import.meta.url);
const file = (name: string): Uint8Array => new Uint8Array(readFileSync(require.resolve(name)));
