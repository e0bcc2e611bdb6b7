import type { UnitSystem, Vec3 } from "@armwright/engine";
import { type Color, Group } from "three";
import { groundHeight } from "../frame.ts";
import { DASH, Lines } from "../kit/lines.ts";
import { INCH } from "../kit/space.ts";
import type { Part, Workshop } from "../part.ts";

/** Squares of the floor, m, and every how many a heavier line with its number. */
export const SQUARES: Readonly<Record<UnitSystem, { readonly size: number; readonly every: number }>> = {
  "inch-pound": { size: 3 * INCH, every: 4 },
  metric: { size: 0.1, every: 5 },
};

/** How far the floor reaches from the wheel, m. */
const FORE = 0.6;
const INBOARD = 0.15;

/** Floor under the tyre as it stands now, squared in the car's unit, with ticks; low points of the underbody above it. */
export function groundPart({ inks }: Workshop, colours: { readonly grid: Color; readonly zero: Color }): Part {
  const object = new Group();
  const floor = new Group();
  const grid = new Lines(inks, { colour: colours.grid, width: 1 }, 128);
  const bold = new Lines(inks, { colour: colours.zero, width: 1.2 }, 64);
  const low = new Lines(inks, { colour: inks.uniforms.ink.value, width: 2.2 }, 16);
  const drop = new Lines(inks, { colour: inks.uniforms.pencil.value, width: 1, dash: DASH.dots }, 16);
  floor.add(grid.mesh, bold.mesh);
  object.add(floor, low.mesh, drop.mesh);
  floor.matrixAutoUpdate = false;
  let drawn = "";
  return {
    object,
    show(frame) {
      const { car, corner, options } = frame;
      const height = groundHeight(frame);
      const units = options.units ?? car.units;
      const reach = floorReach(corner.wheelCentre, units, options.bothSides ?? false);
      const key = `${units} ${reach.x0} ${reach.x1} ${reach.y0} ${reach.y1}`;
      if (key !== drawn) {
        drawn = key;
        drawFloor(grid, bold, units, reach);
      }
      floor.matrix.makeTranslation(0, 0, height);
      floor.matrixWorldNeedsUpdate = true;
      low.begin();
      drop.begin();
      for (const { point } of car.underbody) {
        const reachOut = 1.6 * INCH;
        low.segment({ ...point, y: point.y - reachOut }, { ...point, y: point.y + reachOut });
        low.segment({ ...point, x: point.x - reachOut }, { ...point, x: point.x + reachOut });
        drop.segment(point, { ...point, z: height });
      }
      low.end();
      drop.end();
    },
    dispose() {
      for (const each of [grid, bold, low, drop]) each.dispose();
    },
  };
}

export interface FloorReach {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

export function floorReach(wheel: Vec3, units: UnitSystem, bothSides: boolean): FloorReach {
  const { size, every } = SQUARES[units];
  const step = size * every;
  const out = Math.ceil((wheel.y + 0.22) / step) * step;
  return {
    x0: Math.floor((wheel.x - FORE) / step) * step,
    x1: Math.ceil((wheel.x + FORE) / step) * step,
    y0: bothSides ? -out : -Math.ceil(INBOARD / step) * step,
    y1: out,
  };
}

function drawFloor(grid: Lines, bold: Lines, units: UnitSystem, { x0, x1, y0, y1 }: FloorReach): void {
  const { size, every } = SQUARES[units];
  grid.begin();
  bold.begin();
  for (let i = Math.round(x0 / size); i * size <= x1 + 1e-9; i += 1) {
    const lines = i % every === 0 ? bold : grid;
    lines.segment({ x: i * size, y: y0, z: 0 }, { x: i * size, y: y1, z: 0 });
  }
  for (let i = Math.round(y0 / size); i * size <= y1 + 1e-9; i += 1) {
    const lines = i % every === 0 ? bold : grid;
    lines.segment({ x: x0, y: i * size, z: 0 }, { x: x1, y: i * size, z: 0 });
  }
  // Ticks of a tape laid across the car along the rear edge of the floor: whole inches, or centimetres.
  const tick = units === "metric" ? 0.01 : INCH;
  const perSquare = Math.round(size / tick);
  for (let i = Math.round(y0 / tick); i * tick <= y1 + 1e-9; i += 1) {
    const reach = i % (perSquare * every) === 0 ? 1.8 : i % perSquare === 0 ? 1.2 : 0.6;
    bold.segment({ x: x0, y: i * tick, z: 0 }, { x: x0 - reach * INCH, y: i * tick, z: 0 });
  }
  grid.end();
  bold.end();
}
