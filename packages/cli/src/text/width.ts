// Characters that a terminal shows two columns wide: East Asian Wide and Fullwidth of Unicode Standard Annex 11
// (EastAsianWidth.txt), neighbouring blocks run together; pictures among them.
const WIDE: readonly (readonly [from: number, to: number])[] = [
  [0x1100, 0x115f],
  [0x231a, 0x231b],
  [0x2e80, 0x303e],
  [0x3041, 0xa4cf],
  [0xa960, 0xa97c],
  [0xac00, 0xd7a3],
  [0xf900, 0xfaff],
  [0xfe10, 0xfe19],
  [0xfe30, 0xfe6f],
  [0xff00, 0xff60],
  [0xffe0, 0xffe6],
  [0x16fe0, 0x18aff],
  [0x1b000, 0x1b2ff],
  [0x1f300, 0x1f64f],
  [0x1f680, 0x1f6ff],
  [0x1f900, 0x1faff],
  [0x20000, 0x3fffd],
];

/** Columns of a terminal that a text takes: wide letters two, marks that sit on a letter none. */
export function widthOf(text: string): number {
  let width = 0;
  for (const letter of text) width += letterWidth(letter);
  return width;
}

export function letterWidth(letter: string): number {
  const code = letter.codePointAt(0) ?? 0;
  if (code < 0x300) return 1;
  if (/^[\p{Mn}\p{Me}]/u.test(letter)) return 0;
  return WIDE.some(([from, to]) => code >= from && code <= to) ? 2 : 1;
}
