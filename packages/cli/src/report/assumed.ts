import { formatValue, type Study } from "@armwright/engine";
import type { Page } from "../text/page.ts";
import { table } from "../text/table.ts";

/** What was left out of the document and put in for it; the same for several parts is told once. */
export function assumedLines({ car }: Pick<Study, "car">, page: Page): readonly string[] {
  const groups = new Map<
    string,
    { readonly path: string; readonly value: string; readonly because: string; count: number }
  >();
  for (const { path, value, dimension, because } of car.assumed) {
    const shown = formatValue(value, dimension, page.units);
    const anyOne = path.replace(/\[[^\]]*\]/g, "[…]");
    const key = JSON.stringify([anyOne, shown, because]);
    const group = groups.get(key);
    if (group) group.count += 1;
    else groups.set(key, { path, value: shown, because, count: 1 });
  }
  if (groups.size === 0) return [];
  return table(
    [
      { head: ["place in the document"], align: "left" },
      { head: ["assumed"], align: "left", gives: true },
      { head: ["because"], align: "left", gives: true },
    ],
    [...groups.values()].map(({ path, value, because, count }) => ({
      cells: [count === 1 ? path : `${path.replace(/\[[^\]]*\]/g, "[…]")}, ${count} of them`, value, because],
    })),
    page.width,
  );
}
