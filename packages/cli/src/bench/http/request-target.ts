/** A request's path, taken apart and decoded once. */
export interface Target {
  readonly segments: readonly string[];
  readonly isApi: boolean;
}

const LONGEST = 2000;

/**
 * Reads the raw target of a request line. Anything that could mean another place than it seems to (dot segments in any
 * encoding, doubled or encoded slashes, backslashes, control characters, a whole address) gives undefined.
 */
export function readTarget(raw: string): Target | undefined {
  if (raw.length > LONGEST || !raw.startsWith("/")) return undefined;
  const path = raw.split(/[?#]/, 1)[0] ?? "";
  if (!/^[\x21-\x7e]*$/.test(path) || path.includes("\\")) return undefined;
  const segments: string[] = [];
  for (const [index, part] of path.slice(1).split("/").entries()) {
    const segment = decoded(part);
    if (segment === undefined) return undefined;
    if (segment === "" && (index > 0 || path !== "/")) return undefined;
    if (segment !== "") segments.push(segment);
  }
  return { segments, isApi: segments[0] === "api" };
}

function decoded(part: string): string | undefined {
  try {
    const segment = decodeURIComponent(part);
    // What still holds a % was encoded twice: no name of ours has one.
    const isPlain = !/[\p{Cc}/\\%:]/u.test(segment) && !segment.startsWith(".") && !segment.endsWith(".");
    return isPlain ? segment : undefined;
  } catch {
    return undefined;
  }
}
