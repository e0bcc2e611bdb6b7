import type { SolveAnswer } from "@armwright/engine";

/** An answer as JSON, all numbers in SI; the operations' values as they are typed in the document. */
export function solveJson(answer: SolveAnswer): string {
  return `${JSON.stringify({ units: "SI", ...answer }, null, 2)}\n`;
}
