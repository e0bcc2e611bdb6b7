/** Whether two JSON values say the same, whatever the order of their fields. */
export function sameValue(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b)) {
    return (
      Array.isArray(a) &&
      Array.isArray(b) &&
      a.length === b.length &&
      a.every((item, index) => sameValue(item, b[index]))
    );
  }
  const left = Object.entries(a);
  const right = new Map(Object.entries(b));
  return (
    left.length === right.size && left.every(([name, value]) => right.has(name) && sameValue(value, right.get(name)))
  );
}
