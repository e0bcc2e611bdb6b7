import type { PathStep, Primitive, Sheet, Spot } from "@armwright/drawing";
import type { Vec3 } from "@armwright/engine";
import type { ViewName } from "../store/bench-state.ts";

/** Brackets round the spot that a finding is about. */
export function spotMark(view: ViewName, { x, y, z }: Vec3, sheet: Sheet): readonly Primitive[] {
  const { origin, scale, pen } = sheet;
  const right = view === "left" ? x : y;
  const up = view === "top" ? x : z;
  const at = { x: origin.x - right * scale, y: origin.y - up * scale };
  const r = 14 * pen;
  const corner = (sx: 1 | -1, sy: 1 | -1): PathStep[] => {
    const spot = (dx: number, dy: number): Spot => ({ x: at.x + sx * dx, y: at.y + sy * dy });
    return [
      { to: "move", at: spot(r, r * 0.4) },
      { to: "line", at: spot(r, r) },
      { to: "line", at: spot(r * 0.4, r) },
    ];
  };
  return [
    {
      shape: "line",
      layer: "spot",
      meaning: "the spot",
      path: [...corner(1, 1), ...corner(-1, 1), ...corner(-1, -1), ...corner(1, -1)],
      ink: "stop",
      weight: "outline",
      dash: "solid",
    },
  ];
}
