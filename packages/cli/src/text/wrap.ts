import { plain } from "./plain.ts";
import { letterWidth, widthOf } from "./width.ts";

/** Words broken into lines of at most `width` columns; a longer word is broken where it has to be. */
export function wrap(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of wordsOf(text)) {
    for (const piece of pieces(word, width)) {
      const joined = line === "" ? piece : `${line} ${piece}`;
      if (widthOf(joined) <= width) {
        line = joined;
      } else {
        if (line !== "") lines.push(line);
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

/** A tape mark such as `12 3/16` is one word, and stays with its unit. */
export const wordsOf = (text: string): readonly string[] =>
  plain(text)
    .split(/ +(?!(?<=\d )\d+\/\d)(?!(?<=\d )(?:in|mm|deg|lb|kg|N|%)(?![a-z]))/)
    .filter((word) => word !== "");

function pieces(word: string, width: number): readonly string[] {
  if (widthOf(word) <= width) return [word];
  const parts: string[] = [];
  let part = "";
  let used = 0;
  for (const letter of word) {
    const wide = letterWidth(letter);
    if (part !== "" && used + wide > width) {
      parts.push(part);
      part = "";
      used = 0;
    }
    part += letter;
    used += wide;
  }
  return part === "" ? parts : [...parts, part];
}
