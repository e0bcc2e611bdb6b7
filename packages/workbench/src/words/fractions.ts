const FRACTION = /(\d+ )?(\d+)\/(2|4|8|16|32|64)(?![\d/])/g;

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
