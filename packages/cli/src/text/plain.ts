/** Text of a document, made safe to print: no control characters, which could move a terminal's cursor, no line breaks. */
export const plain = (text: string): string => text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]+/gu, " ");

/** Characters as a terminal counts them for the letters that we print. */
export const widthOf = (text: string): number => [...text].length;
