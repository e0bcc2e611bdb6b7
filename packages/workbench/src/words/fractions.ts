/** A piece of a reading: plain text, or a fraction of an inch that is set as one. */
export interface Piece {
  readonly text: string;
  readonly isFraction: boolean;
}

const FRACTION = /(\d+ )?(\d+)\/(2|4|8|16|32|64)(?![\d/])/g;

/** `12 3/16 in` as `12`, `3⁄16`, ` in`: no space before the fraction, the fraction slash within. */
export function pieces(text: string): readonly Piece[] {
  const found: Piece[] = [];
  let from = 0;
  for (const match of text.matchAll(FRACTION)) {
    const whole = match[1]?.trim() ?? "";
    const before = text.slice(from, match.index) + whole;
    if (before !== "") found.push({ text: before, isFraction: false });
    found.push({ text: `${match[2]}\u2044${match[3]}`, isFraction: true });
    from = match.index + match[0].length;
  }
  if (from < text.length) found.push({ text: text.slice(from), isFraction: false });
  return found;
}

const PARTS: Readonly<Record<string, readonly [string, string]>> = {
  "2": ["half", "halves"],
  "4": ["quarter", "quarters"],
  "8": ["eighth", "eighths"],
  "16": ["sixteenth", "sixteenths"],
  "32": ["thirty-second", "thirty-seconds"],
  "64": ["sixty-fourth", "sixty-fourths"],
};

/** As it is read aloud: `12 and 3 sixteenths in`. */
export function spoken(text: string): string {
  return text
    .replace(FRACTION, (_, whole: string | undefined, top: string, bottom: string) => {
      const [one, many] = PARTS[bottom] ?? ["", ""];
      const part = `${top} ${top === "1" ? one : many}`;
      return whole === undefined ? part : `${whole.trim()} and ${part}`;
    })
    .replace(/\u2212(?=\d)/g, "minus ")
    .replace(/\+(?=\d)/g, "plus ");
}

export const hasFraction = (text: string): boolean => text.search(FRACTION) >= 0;
