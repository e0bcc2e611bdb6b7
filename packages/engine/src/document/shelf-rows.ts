/** A row of a builder's own list of parts, by the names of its fields. */
export type ShelfRow = Readonly<Record<string, unknown>>;

/** What is wrong with a list, thrown inside its reader only: where, what was found, what would be right. */
export class ShelfFault extends Error {}

/** Rows of a list as CSV: names in its first line; empty cells are left out. */
export function csvRows(text: string): readonly ShelfRow[] {
  const [head = "", ...lines] = text.split(/\r?\n/).filter((line) => line.trim() !== "");
  const names = cells(head);
  return lines.map((line) =>
    Object.fromEntries(cells(line).flatMap((cell, i) => (cell === "" ? [] : [[names[i] ?? "", cell] as const]))),
  );
}

const cells = (line: string): readonly string[] =>
  line.split(/[,;\t]/).map((cell) => cell.trim().replace(/^"(.*)"$/, "$1"));

/** Throws ShelfFault for a field that the list has not: a misspelt one would go unread without a word. */
export function refuseStrange(row: ShelfRow, place: string, fields: readonly string[]): void {
  const strange = Object.keys(row).find((name) => !fields.includes(name));
  if (strange !== undefined)
    throw new ShelfFault(`${place}.${strange}: there is no such field here: the fields are ${fields.join(", ")}.`);
}
