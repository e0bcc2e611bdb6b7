const HOUR = 3600_000;
const DAY = 24 * HOUR;
const MOST_VERSIONS = 200;
const MOST_BYTES = 50_000_000;

/**
 * The versions worth keeping, of a list newest first: all of the last day, the last of each hour for a week, the last
 * of each day before that; 200 and 50 MB at most, the oldest going first.
 */
export function thinned<V extends { readonly at: string; readonly bytes: number }>(
  versions: readonly V[],
  now: number,
): readonly V[] {
  const taken = new Set<string>();
  const kept: V[] = [];
  let bytes = 0;
  for (const version of versions) {
    const time = Date.parse(version.at);
    const age = now - time;
    const slot = age < DAY ? version.at : age < 7 * DAY ? `h${Math.floor(time / HOUR)}` : `d${Math.floor(time / DAY)}`;
    if (taken.has(slot)) continue;
    bytes += version.bytes;
    if (kept.length > 0 && (kept.length >= MOST_VERSIONS || bytes > MOST_BYTES)) break;
    taken.add(slot);
    kept.push(version);
  }
  return kept;
}
