import type { Notch } from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { Reading } from "../words/Reading.tsx";
import { shown } from "../words/shown.ts";

const SIZE = 150;
const EDGE = 8;

/** What to cut out of a face, seen square to it: the face's edge where it is near, and the outline's reach on the tape. */
export function NotchTemplate({ outline }: { readonly outline: NonNullable<Notch["outline"]> }): ReactNode {
  const units = useBench((state) => state.units);
  const { points, face, depth } = outline;
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const scale = (SIZE - 2 * EDGE) / Math.max(right - left, high - low, 1e-3);
  const at = ({ x, y }: { readonly x: number; readonly y: number }): string =>
    `${(EDGE + (x - left) * scale).toFixed(1)} ${(EDGE + (high - y) * scale).toFixed(1)}`;
  const words = (metres: number): string => shown(metres, "length", units);
  return (
    <figure className="notch">
      <svg
        viewBox={`0 0 ${SIZE} ${Math.round(2 * EDGE + (high - low) * scale)}`}
        role="img"
        aria-label="The notch's outline"
      >
        <path fill="url(#hatch-cut)" d={`M${points.map(at).join("L")}z`} />
      </svg>
      <figcaption className="small quiet">
        On the {face === "plane" ? "face" : `${face} face`}, as you look at it: <Reading text={words(right - left)} />{" "}
        wide, <Reading text={words(high - low)} /> high, <Reading text={words(depth)} /> deep; it begins{" "}
        <Reading text={words(left)} /> across and <Reading text={words(low)} /> up from the face's lower left corner.
      </figcaption>
    </figure>
  );
}
