import { type Block, flow } from "../paper/flow.ts";
import type { Makings, Sheet } from "./sheet.ts";

/** Blocks as sheets of one title: `shaft`, then `shaft-2` and so on where they go on. */
export function flowSheets(
  { id, title, note }: Pick<Sheet, "id" | "title" | "note">,
  blocks: readonly Block[],
  { room }: Makings,
): readonly Sheet[] {
  return flow(blocks, room).map((parts, index) =>
    index === 0
      ? { id, title, note, parts }
      : { id: `${id}-${index + 1}`, title: `${title}, sheet ${index + 1}`, note, parts },
  );
}
