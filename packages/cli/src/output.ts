import type { Io } from "./io.ts";
import type { Words } from "./parse-words.ts";
import { Refusal } from "./refusal.ts";
import { plain } from "./text/plain.ts";

/** Writes a command's result to where --out says, or to the output. A car document that was read is never written over. */
export function deliver(text: string, words: Words, io: Io): void {
  const file = words.values.get("out");
  if (file === undefined || file === "-") {
    io.out(text);
    return;
  }
  if (words.operands.some((operand) => operand === file || io.isSame(operand, file))) {
    throw new Refusal(`${file} is the car document itself: name another file for --out.`);
  }
  io.write(file, text);
  io.err(`Wrote ${plain(file)}.\n`);
}
