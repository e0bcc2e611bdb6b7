import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** Whether the page renderer of poppler-utils is on this machine; `.ci/run` installs it. */
export const hasRenderer: boolean = (() => {
  try {
    execFileSync("pdftoppm", ["-v"], { stdio: "ignore" });
    return true;
  } catch {
    return false;
  }
})();

/** A page as grey pixels, 10 to a mm (254 dpi). */
export interface Rendered {
  readonly width: number;
  readonly height: number;
  readonly isDark: (x: number, y: number) => boolean;
}

export const PIXELS_PER_MM = 10;

/** Renders one page (from 1) of a PDF with Debian's pdftoppm. */
export function rendered(pdf: Uint8Array, page: number): Rendered {
  const folder = mkdtempSync(join(tmpdir(), "armwright-page-"));
  try {
    const file = join(folder, "book.pdf");
    writeFileSync(file, pdf);
    const at = ["-f", String(page), "-l", String(page)];
    execFileSync("pdftoppm", [
      "-r",
      String(PIXELS_PER_MM * 25.4),
      "-gray",
      "-aa",
      "no",
      "-aaVector",
      "no",
      ...at,
      "-singlefile",
      file,
      join(folder, "page"),
    ]);
    return readPgm(readFileSync(join(folder, "page.pgm")));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Words of a PDF as pdftotext finds them: what can be selected. */
export function selectable(pdf: Uint8Array): string {
  return execFileSync("pdftotext", ["-layout", "-", "-"], { input: pdf, encoding: "utf8" });
}

/** What pdffonts says of a PDF's faces: one line a face, whether it is embedded. */
export function faces(pdf: Uint8Array): readonly { readonly name: string; readonly isEmbedded: boolean }[] {
  const folder = mkdtempSync(join(tmpdir(), "armwright-faces-"));
  try {
    const file = join(folder, "book.pdf");
    writeFileSync(file, pdf);
    const lines = execFileSync("pdffonts", [file], { encoding: "utf8" }).trim().split("\n").slice(2);
    return lines.map((line) => ({
      name: line.slice(0, 36).trim(),
      isEmbedded: /^(yes)/.test(line.slice(72).trimStart()),
    }));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function readPgm(bytes: Buffer): Rendered {
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 64).toString("latin1"));
  if (!head) throw new Error("not a grey picture");
  const [width, height] = [Number(head[1]), Number(head[2])];
  const pixels = bytes.subarray(head[0].length);
  return { width, height, isDark: (x, y) => (pixels[y * width + x] ?? 255) < 128 };
}
