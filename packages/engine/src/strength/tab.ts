/** Stress in a tab or pair of tabs by a bolt's pull in their plane, Pa. */
export interface TabStress {
  /** Of the bolt on the hole: F / (n d t). */
  readonly bearing: number;
  /** Of the two shear planes out to the edge: F / (2 n t (edge − d/2)). */
  readonly tearOut: number;
  /** Of what stands beside the hole: F / (n t (width − d)). */
  readonly net: number;
}

export interface Tab {
  /** 1 or 2 carry the bolt. */
  readonly count: 1 | 2;
  readonly thickness: number;
  /** Across the pull, at the hole. */
  readonly width: number;
  /** From the hole's middle to the edge that the pull points at. */
  readonly edge: number;
  readonly hole: number;
}

export function tabStress({ count, thickness, width, edge, hole }: Tab, force: number): TabStress {
  const over = (area: number): number => (area > 0 ? force / (count * area) : Number.POSITIVE_INFINITY);
  return {
    bearing: over(hole * thickness),
    tearOut: over(2 * thickness * (edge - hole / 2)),
    net: over(thickness * (width - hole)),
  };
}

/** Bending of tabs by a force along the bolt, on the line where they are welded on: 6 F h / (n w t²). */
export const tabSideBending = ({ count, thickness, width }: Tab, along: number, height: number): number =>
  (6 * along * height) / (count * width * thickness ** 2);

/** Bearing that a hole bears before it widens, of the yield strength, with an edge of 1.5 diameters: from memory of MIL-HDBK-5's steels. */
export const BEARING_OF_YIELD = 1.5;
