/** Text of a document or a command line, made safe to print: no control characters, which could move a terminal's cursor, no line breaks. */
export const plain = (text: string): string => text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]+/gu, " ");

/** At most so many characters, cut at a word where one ends near, with an ellipsis. */
export function shortened(text: string, most: number): string {
  const letters = [...text];
  if (letters.length <= most) return text;
  const cut = letters.slice(0, most - 1).join("");
  const word = cut.lastIndexOf(" ");
  return `${(word > most / 2 ? cut.slice(0, word) : cut).trimEnd()}…`;
}
