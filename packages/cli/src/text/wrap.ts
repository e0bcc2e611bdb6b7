import { plain, widthOf } from "./plain.ts";

/** Words broken into lines of at most `width` characters; a longer word is broken where it has to be. */
export function wrap(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of wordsOf(text)) {
    for (const piece of pieces(word, width)) {
      const joined = line === "" ? piece : `${line} ${piece}`;
      if (widthOf(joined) <= width) {
        line = joined;
      } else {
        lines.push(line);
        line = piece;
      }
    }
  }
  if (line !== "" || lines.length === 0) lines.push(line);
  return lines;
}

/** The same with the first line after `lead` and the others under its end. */
export function hang(lead: string, text: string, width: number): readonly string[] {
  const blank = " ".repeat(widthOf(lead));
  return wrap(text, width - widthOf(lead)).map((line, index) => (index === 0 ? lead : blank) + line);
}

/** A tape mark such as `12 3/16` is one word. */
const wordsOf = (text: string): readonly string[] =>
  plain(text)
    .split(/ +(?!(?<=\d )\d+\/\d)/)
    .filter((word) => word !== "");

function pieces(word: string, width: number): readonly string[] {
  const letters = [...word];
  const parts: string[] = [];
  for (let i = 0; i < letters.length; i += width) parts.push(letters.slice(i, i + width).join(""));
  return parts;
}
