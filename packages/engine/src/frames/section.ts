import type { Vec3 } from "../geometry/vec3.ts";
import { rectangleTorsion } from "./rectangle-torsion.ts";

/**
 * Cross-section of a frame member. In the member's own axes x runs along it, z along its depth, y across: width is
 * along y, depth along z. Metres.
 */
export type Section =
  | {
      readonly shape: "round-tube";
      readonly diameter: number /** Half of the diameter: a solid bar. */;
      readonly wall: number;
    }
  | { readonly shape: "rectangular-tube"; readonly width: number; readonly depth: number; readonly wall: number }
  | { readonly shape: "flat-bar"; readonly width: number; readonly depth: number }
  /** Two upright side plates with a cover plate above and one below, all of full width or depth. */
  | {
      readonly shape: "boxed-plate";
      readonly width: number;
      readonly depth: number;
      readonly sideThickness: number;
      readonly coverThickness: number;
    };

/** What a beam needs of its section, m², m⁴. */
export interface SectionProperties {
  readonly area: number;
  /** Second moments of area about the section's own y and z axis. */
  readonly iy: number;
  readonly iz: number;
  /** Torsion constant. */
  readonly torsion: number;
  /** Area times shear coefficient for a shear force along y and along z. */
  readonly shearAreaY: number;
  readonly shearAreaZ: number;
}

/** Steel's Poisson's ratio, rounded: Shigley, Mechanical Engineering Design, Table A-5, carbon steel 0.292 (from memory). */
export const STEEL_POISSON = 0.3;

/** Shear coefficients after G. R. Cowper, "The Shear Coefficient in Timoshenko's Beam Theory", J. Appl. Mech. 33 (1966). */
export function sectionProperties(section: Section, poisson = STEEL_POISSON): SectionProperties {
  switch (section.shape) {
    case "round-tube":
      return roundTube(section.diameter, section.wall, poisson);
    case "rectangular-tube":
      return box(section.width, section.depth, section.wall, section.wall, poisson);
    case "boxed-plate":
      return box(section.width, section.depth, section.sideThickness, section.coverThickness, poisson);
    case "flat-bar":
      return flatBar(section.width, section.depth, poisson);
  }
}

/** Whether wall and size go together: a tube has to have a hole or be just solid. */
export function isSoundSection(section: Section): boolean {
  switch (section.shape) {
    case "round-tube":
      return section.wall > 0 && section.diameter >= 2 * section.wall;
    case "rectangular-tube":
      return section.wall > 0 && Math.min(section.width, section.depth) > 2 * section.wall;
    case "boxed-plate":
      return (
        Math.min(section.sideThickness, section.coverThickness) > 0 &&
        section.width > 2 * section.sideThickness &&
        section.depth > 2 * section.coverThickness
      );
    case "flat-bar":
      return Math.min(section.width, section.depth) > 0;
  }
}

/** Outside size across y and z, m. */
export const outsideOf = (section: Section): Pick<Vec3, "y" | "z"> =>
  section.shape === "round-tube"
    ? { y: section.diameter, z: section.diameter }
    : { y: section.width, z: section.depth };

function roundTube(diameter: number, wall: number, poisson: number): SectionProperties {
  const inner = Math.max(0, diameter - 2 * wall);
  const area = (Math.PI / 4) * (diameter ** 2 - inner ** 2);
  const i = (Math.PI / 64) * (diameter ** 4 - inner ** 4);
  // Cowper, hollow circle: m inner over outer radius.
  const m2 = (inner / diameter) ** 2;
  const square = (1 + m2) ** 2;
  const coefficient = (6 * (1 + poisson) * square) / ((7 + 6 * poisson) * square + (20 + 12 * poisson) * m2);
  const shear = coefficient * area;
  return { area, iy: i, iz: i, torsion: 2 * i, shearAreaY: shear, shearAreaZ: shear };
}

function box(width: number, depth: number, side: number, cover: number, poisson: number): SectionProperties {
  const insideWidth = width - 2 * side;
  const insideDepth = depth - 2 * cover;
  const area = width * depth - insideWidth * insideDepth;
  const b = width - side;
  const h = depth - cover;
  // Bredt: torsion constant of a thin-walled closed section, 4 A² / Σ(length / thickness), on the middle line.
  const torsion = (4 * (b * h) ** 2) / ((2 * h) / side + (2 * b) / cover);
  return {
    area,
    iy: (width * depth ** 3 - insideWidth * insideDepth ** 3) / 12,
    iz: (depth * width ** 3 - insideDepth * insideWidth ** 3) / 12,
    torsion,
    shearAreaY: area * boxCoefficient(h, b, cover, side, poisson),
    shearAreaZ: area * boxCoefficient(b, h, side, cover, poisson),
  };
}

/** Cowper, thin-walled box: b across and h along the shear force; `web` lies along it, `flange` across. */
function boxCoefficient(b: number, h: number, web: number, flange: number, nu: number): number {
  const n = b / h;
  const m = (b * flange) / (h * web);
  const top = 10 * (1 + nu) * (1 + 3 * m) ** 2;
  const bottom =
    12 +
    72 * m +
    150 * m ** 2 +
    90 * m ** 3 +
    nu * (11 + 66 * m + 135 * m ** 2 + 90 * m ** 3) +
    10 * n ** 2 * ((3 + nu) * m + 3 * m ** 2);
  return top / bottom;
}

function flatBar(width: number, depth: number, nu: number): SectionProperties {
  const area = width * depth;
  const shear = (area * 10 * (1 + nu)) / (12 + 11 * nu);
  return {
    area,
    iy: (width * depth ** 3) / 12,
    iz: (depth * width ** 3) / 12,
    torsion: rectangleTorsion(width, depth).constant,
    shearAreaY: shear,
    shearAreaZ: shear,
  };
}
