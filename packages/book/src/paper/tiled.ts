import { type Box, group, type Primitive, spot, stroke, text } from "@armwright/drawing";
import { moved } from "./moved.ts";

/** Strip that neighbouring sheets share, mm. */
const SHARED = 12;

/**
 * A true-size drawing (from its own upper left corner, mm) cut into sheets that are no larger than `room`, each with crosses
 * to lay it on its neighbours by: the same cross stands on both. One sheet where it fits.
 */
export function tiled(
  parts: readonly Primitive[],
  width: number,
  height: number,
  room: Box,
): readonly (readonly Primitive[])[] {
  const across = count(width, room.width);
  const down = count(height, room.height);
  if (across * down === 1) return [parts.map((part) => moved(part, room.x, room.y))];
  const stepX = room.width - SHARED;
  const stepY = room.height - SHARED;
  const sheets: (readonly Primitive[])[] = [];
  for (let row = 0; row < down; row += 1) {
    for (let column = 0; column < across; column += 1) {
      const left = column * stepX;
      const top = row * stepY;
      const shown = parts.map((part) => moved(part, room.x - left, room.y - top));
      const crosses: Primitive[] = [];
      const cross = (x: number, y: number, name: string): void => {
        const [cx, cy] = [room.x + x - left, room.y + y - top];
        crosses.push(
          stroke("register", spot(cx - 5, cy), spot(cx + 5, cy), { weight: "thin" }),
          stroke("register", spot(cx, cy - 5), spot(cx, cy + 5), { weight: "thin" }),
          text("register", spot(cx + 1.5, cy - 1.5), name, { ink: "ink", bold: true }),
        );
      };
      const middle = SHARED / 2;
      for (const [r, c] of [
        [row, column],
        [row, column + 1],
      ] as const) {
        if (c === 0 || c === across) continue;
        for (const share of [0.2, 0.8])
          cross(c * stepX + middle, top + share * room.height, `${r + 1}${LETTERS[c - 1]}${share < 0.5 ? "1" : "2"}`);
      }
      for (const [r, c] of [
        [row, column],
        [row + 1, column],
      ] as const) {
        if (r === 0 || r === down) continue;
        for (const share of [0.2, 0.8])
          cross(left + share * room.width, r * stepY + middle, `${LETTERS[r - 1]}${c + 1}${share < 0.5 ? "1" : "2"}`);
      }
      sheets.push([group("tile", shown, { clip: room }), ...crosses]);
    }
  }
  return sheets;
}

const LETTERS = "ABCDEFGHJK";

const count = (size: number, room: number): number => (size <= room ? 1 : Math.ceil((size - SHARED) / (room - SHARED)));
