import type { Study, UnitSystem } from "@armwright/engine";
import { cycleEnds } from "../store/travel.ts";

/** The wheel's heights of a cycle on the stands: full droop, every inch or 25 mm, full bump, from the lowest up, m. */
export function cycleHeights(study: Study, units: UnitSystem): readonly number[] {
  const step = units === "metric" ? 0.025 : 0.0254;
  const { droop, bump } = cycleEnds(study);
  const between: number[] = [];
  for (let i = Math.ceil(droop / step); i <= Math.floor(bump / step); i += 1) {
    const at = i * step;
    if (at - droop > step / 4 && bump - at > step / 4) between.push(at === 0 ? 0 : at);
  }
  return [droop, ...between, bump];
}

/** The height next to a travel, up or down; the travel itself at the ends. */
export function nextHeight(heights: readonly number[], travel: number, way: 1 | -1): number {
  const beyond = heights.filter((height) => way * (height - travel) > 1e-6);
  const next = way === 1 ? beyond[0] : beyond.at(-1);
  return next ?? travel;
}
