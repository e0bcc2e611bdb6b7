/** The option that was probably meant, or undefined where none is near. */
export function nearestWord(typed: string, options: readonly string[]): string | undefined {
  let best: string | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const option of options) {
    const changes = editDistance(plain(typed), plain(option));
    if (changes < least && changes <= Math.min(MOST_SLIPS, Math.max(1, Math.floor(option.length / 3)))) {
      best = option;
      least = changes;
    }
  }
  return best;
}

/** More slips than this, or than a third of the letters, make another word. */
const MOST_SLIPS = 3;

/** Capitals, hyphens, blanks and underscores do not count: `bump_stop` is near to `bumpStop`. */
const plain = (word: string): string => word.slice(0, 80).toLowerCase().replace(/[-_ ]/g, "");

/** Letters to put in, take out or change (Levenshtein's distance), row by row. */
function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(change, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}
