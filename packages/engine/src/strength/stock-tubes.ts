/** Round tube as it is commonly stocked; common practice, no source. m. */
export interface TubeSize {
  readonly diameter: number;
  readonly wall: number;
}

const INCH = 0.0254;
const DIAMETERS = [0.75, 0.875, 1, 1.125, 1.25, 1.375, 1.5, 1.625, 1.75, 2, 2.25, 2.5].map((d) => d * INCH);
const WALLS = [0.065, 0.083, 0.095, 0.12, 0.156, 0.188, 0.25].map((w) => w * INCH);
const SAME = 1e-5;

/** Next wall and next diameter either way; none where the list ends. */
export function nextSizes({ diameter, wall }: TubeSize): readonly TubeSize[] {
  const up = (list: readonly number[], value: number) => list.find((each) => each > value + SAME);
  const down = (list: readonly number[], value: number) => list.findLast((each) => each < value - SAME);
  const sizes = [
    { diameter: up(DIAMETERS, diameter), wall },
    { diameter, wall: up(WALLS, wall) },
    { diameter: down(DIAMETERS, diameter), wall },
    { diameter, wall: down(WALLS, wall) },
  ];
  return sizes.filter((size): size is TubeSize => size.diameter !== undefined && size.wall !== undefined);
}

/** The nearest stocked size at or above this outside diameter that `holds`, lightest first; null where none does. */
export function lightestThat(from: TubeSize, holds: (size: TubeSize) => boolean): TubeSize | null {
  const heavier = DIAMETERS.filter((d) => d >= from.diameter - SAME)
    .flatMap((diameter) => WALLS.filter((w) => w >= from.wall - SAME).map((wall) => ({ diameter, wall })))
    .sort((a, b) => weight(a) - weight(b));
  return heavier.find((size) => weight(size) > weight(from) * (1 + 1e-9) && holds(size)) ?? null;
}

const weight = ({ diameter, wall }: TubeSize): number => wall * (diameter - wall);
