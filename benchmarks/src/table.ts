/** Lays rows out in columns, the first one left, the others right. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const all = [head, ...rows];
  const widths = head.map((_, column) => Math.max(...all.map((row) => row[column]!.length)));
  const lines = all.map((row) =>
    row
      .map((cell, column) => (column === 0 ? cell.padEnd(widths[column]!) : cell.padStart(widths[column]!)))
      .join("  "),
  );
  return [lines[0]!, "-".repeat(lines[0]!.length), ...lines.slice(1)].join("\n");
}

export const microseconds = (seconds: number): string => (seconds * 1e6).toFixed(seconds < 1e-6 ? 3 : 2);
export const times = (ratio: number): string => `${ratio.toFixed(ratio < 10 ? 2 : 0)}x`;
