/** The name that was probably meant, or undefined where none is near: at most a third of its letters (three) differ. */
export function nearestName(typed: string, names: readonly string[]): string | undefined {
  const ranked = names
    .map((name) => ({ name, slips: slipsBetween(typed.slice(0, 40).toLowerCase(), name) }))
    .filter(({ name, slips }) => slips <= Math.min(3, Math.max(1, Math.floor(name.length / 3))))
    .sort((a, b) => a.slips - b.slips);
  return ranked[0]?.name;
}

/** Letters to put in, take out or change (Levenshtein's distance). */
function slipsBetween(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      next.push(Math.min(next[j - 1]! + 1, row[j]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)));
    }
    row = next;
  }
  return row[b.length]!;
}
