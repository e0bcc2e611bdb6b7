import type { UnitSystem } from "../car/car.ts";
import { INCH } from "../units/convert.ts";
import { formatLength, formatNumber } from "../units/format.ts";
import type { TubeSize } from "./stock-tubes.ts";

/** A wall as it is sold: `.120 in`, `3.05 mm`. m in. */
export const formatWall = (wall: number, system: UnitSystem): string =>
  system === "metric" ? `${metric(wall)} mm` : `${inchWall(wall)} in`;

/** A tube as it is sold: `1 1/2 × .120 in`, `38.1 × 3.05 mm`. */
export const formatTube = ({ diameter, wall }: TubeSize, system: UnitSystem): string =>
  system === "metric"
    ? `${metric(diameter)} × ${metric(wall)} mm`
    : `${formatLength(diameter, system)} × ${inchWall(wall)} in`;

const metric = (metres: number): string => String(Number((metres * 1000).toFixed(2)));
const inchWall = (metres: number): string => formatNumber(metres / INCH, 3).replace(/^0/, "");

/** A size as it is typed into a document. */
export function typedSize(metres: number, system: UnitSystem): number | string {
  if (system === "metric") return Number((metres * 1000).toFixed(2));
  const sixteenths = (metres / INCH) * 16;
  return Math.abs(sixteenths - Math.round(sixteenths)) < 1e-6
    ? typedTape(metres, system)
    : Number((metres / INCH).toFixed(3));
}

function typedTape(metres: number, system: UnitSystem): number | string {
  const text = formatLength(metres, system);
  return /^\d+$/.test(text) ? Number(text) : text;
}
