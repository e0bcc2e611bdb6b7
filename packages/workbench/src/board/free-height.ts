import { boxOfText, type Primitive } from "@armwright/drawing";

/**
 * Where something of a height fits between the words of a drawing at its left edge, nearest to `wanted`; px from the top.
 * Null where nothing so high is free.
 */
export function freeHeight(
  parts: readonly Primitive[],
  room: { readonly width: number; readonly top: number; readonly bottom: number },
  height: number,
  wanted: number,
): number | null {
  const taken = boxes(parts)
    .filter(({ x }) => x < room.width)
    .map(({ y, height: tall }) => ({ from: y - 6, to: y + tall + 6 }))
    .sort((a, b) => a.from - b.from);
  let best: number | null = null;
  let away = Number.POSITIVE_INFINITY;
  let from = room.top;
  for (const { from: to, to: next } of [...taken, { from: room.bottom, to: room.bottom }]) {
    if (to - from >= height) {
      const at = Math.min(to - height, Math.max(from, wanted));
      if (Math.abs(at - wanted) < away) {
        best = at;
        away = Math.abs(at - wanted);
      }
    }
    from = Math.max(from, next);
  }
  return best;
}

const boxes = (parts: readonly Primitive[]): readonly ReturnType<typeof boxOfText>[] =>
  parts.flatMap((part) =>
    part.shape === "text" ? [boxOfText(part, 1)] : part.shape === "group" ? boxes(part.parts) : [],
  );
