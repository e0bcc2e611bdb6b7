/** A point of a flat outline, m. */
export interface Point2 {
  readonly x: number;
  readonly y: number;
}

/** Corners counterclockwise; fewer than three where the points span no area. Andrew's monotone chain (1979). */
export function convexHull(points: readonly Point2[]): readonly Point2[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const chain = (list: readonly Point2[]): Point2[] => {
    const kept: Point2[] = [];
    for (const point of list) {
      while (kept.length >= 2 && turn(kept[kept.length - 2]!, kept[kept.length - 1]!, point) <= 0) kept.pop();
      kept.push(point);
    }
    return kept.slice(0, -1);
  };
  return [...chain(sorted), ...chain(sorted.reverse())];
}

const turn = (a: Point2, b: Point2, c: Point2): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

/** What of a convex outline lies in the rectangle from 0, 0 to `size`. Cut by one edge after the other (Sutherland, Hodgman 1974). */
export function clippedTo(outline: readonly Point2[], { x, y }: Point2): readonly Point2[] {
  const edges = [
    (p: Point2): number => p.x,
    (p: Point2): number => x - p.x,
    (p: Point2): number => p.y,
    (p: Point2): number => y - p.y,
  ];
  return edges.reduce(cutBy, outline);
}

function cutBy(outline: readonly Point2[], inside: (p: Point2) => number): readonly Point2[] {
  return outline.flatMap((here, i) => {
    const next = outline[(i + 1) % outline.length]!;
    const [a, b] = [inside(here), inside(next)];
    const share = a / (a - b);
    const crossing =
      a > 0 !== b > 0 ? [{ x: here.x + share * (next.x - here.x), y: here.y + share * (next.y - here.y) }] : [];
    return a > 0 ? [here, ...crossing] : crossing;
  });
}
