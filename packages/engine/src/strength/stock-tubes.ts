import type { UnitSystem } from "../car/car.ts";

/** Round tube as it is commonly stocked; common practice, no source. m. */
export interface TubeSize {
  readonly diameter: number;
  readonly wall: number;
}

interface Stock {
  readonly diameters: readonly number[];
  readonly walls: readonly number[];
}

const INCH = 0.0254;
const MM = 0.001;
const STOCK: Readonly<Record<UnitSystem, Stock>> = {
  "inch-pound": {
    diameters: [0.75, 0.875, 1, 1.125, 1.25, 1.375, 1.5, 1.625, 1.75, 2, 2.25, 2.5].map((d) => d * INCH),
    walls: [0.065, 0.083, 0.095, 0.12, 0.156, 0.188, 0.25].map((w) => w * INCH),
  },
  metric: {
    diameters: [20, 22, 25, 28, 30, 32, 35, 38, 40, 42, 45, 48, 50, 55, 60].map((d) => d * MM),
    walls: [1.5, 2, 2.5, 3, 4, 5, 6].map((w) => w * MM),
  },
};
const SAME = 1e-5;

/** Next wall and next diameter either way; none where the list ends. */
export function nextSizes({ diameter, wall }: TubeSize, system: UnitSystem = "inch-pound"): readonly TubeSize[] {
  const { diameters, walls } = STOCK[system];
  const up = (list: readonly number[], value: number) => list.find((each) => each > value + SAME);
  const down = (list: readonly number[], value: number) => list.findLast((each) => each < value - SAME);
  const sizes = [
    { diameter: up(diameters, diameter), wall },
    { diameter, wall: up(walls, wall) },
    { diameter: down(diameters, diameter), wall },
    { diameter, wall: down(walls, wall) },
  ];
  return sizes.filter(
    (size): size is TubeSize =>
      size.diameter !== undefined && size.wall !== undefined && 2 * size.wall <= size.diameter + SAME,
  );
}

/** The lightest stocked size at or above this diameter and wall, up to `most` in diameter, that `holds`; null where none does. */
export const lightestThat = (
  from: TubeSize,
  most: number,
  system: UnitSystem,
  holds: (size: TubeSize) => boolean,
): TubeSize | null =>
  atOrAbove(from, most, system).find((size) => weight(size) > weight(from) * (1 + 1e-9) && holds(size)) ?? null;

/** The heaviest of the sizes that `lightestThat` looks through. */
export const stoutest = (from: TubeSize, most: number, system: UnitSystem): TubeSize =>
  atOrAbove(from, most, system).at(-1) ?? from;

/** Lightest first. */
function atOrAbove(from: TubeSize, most: number, system: UnitSystem): readonly TubeSize[] {
  const { diameters, walls } = STOCK[system];
  const own = (list: readonly number[], value: number) => [value, ...list.filter((each) => each > value + SAME)];
  return own(diameters, from.diameter)
    .filter((d) => d <= most + SAME)
    .flatMap((diameter) => own(walls, from.wall).map((wall) => ({ diameter, wall })))
    .filter(({ diameter, wall }) => 2 * wall <= diameter)
    .sort((a, b) => weight(a) - weight(b));
}

const weight = ({ diameter, wall }: TubeSize): number => wall * (diameter - wall);
