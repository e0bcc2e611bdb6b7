import { rectangleTorsion } from "./rectangle-torsion.ts";
import { outsideOf, type Section, type SectionProperties, sectionProperties } from "./section.ts";

/** What a section carries at one place, in the member's axes: N and N·m; tension positive. */
export interface SectionForce {
  readonly tension: number;
  readonly shearY: number;
  readonly shearZ: number;
  readonly torque: number;
  readonly bendingY: number;
  readonly bendingZ: number;
}

/** Pa. */
export interface SectionStress {
  /** Largest combined stress after von Mises. */
  readonly combined: number;
  /** Largest normal stress, tension positive, whichever way it is larger. */
  readonly normal: number;
  /** Largest shear stress. */
  readonly shear: number;
  /** Where in the section the combined one is, m. */
  readonly y: number;
  readonly z: number;
}

/**
 * Stresses at the section's critical points. Round tubes: sixteen points of the outer surface and the four where bending
 * and shear are greatest; others: corners, and the middles of the sides. Shear after Jourawski (thin walls), torsion after
 * Bredt in closed sections and Saint-Venant in a flat bar. No stress raiser is in it.
 */
export const sectionStress = (section: Section, force: SectionForce): SectionStress => stressReader(section)(force);

/** The same for many forces on one section, of which what does not change is found once. */
export function stressReader(section: Section): (force: SectionForce) => SectionStress {
  const properties = sectionProperties(section);
  if (section.shape === "round-tube") return (force) => worstOf(ring(section, properties, force));
  const flow = torsionFlow(section);
  return (force) => worstOf(corners(section, properties, flow, force));
}

function worstOf(points: readonly Point[]): SectionStress {
  let worst = points[0]!;
  let normal = 0;
  let shear = 0;
  for (const point of points) {
    if (combined(point) > combined(worst)) worst = point;
    if (Math.abs(point.normal) > Math.abs(normal)) normal = point.normal;
    shear = Math.max(shear, Math.abs(point.shear));
  }
  return { combined: combined(worst), normal, shear, y: worst.y, z: worst.z };
}

interface Point {
  readonly y: number;
  readonly z: number;
  readonly normal: number;
  readonly shear: number;
}

const combined = ({ normal, shear }: Point): number => Math.sqrt(normal ** 2 + 3 * shear ** 2);

/** Normal stress at a point: N/A + My z/Iy − Mz y/Iz (right-handed moments). */
const normalAt = (f: SectionForce, p: SectionProperties, y: number, z: number): number =>
  f.tension / p.area + (f.bendingY * z) / p.iy - (f.bendingZ * y) / p.iz;

function ring(
  { diameter, wall }: Extract<Section, { readonly shape: "round-tube" }>,
  p: SectionProperties,
  f: SectionForce,
): readonly Point[] {
  const r = diameter / 2;
  const inner = Math.max(0, r - wall);
  const torsion = (f.torque * r) / p.torsion;
  // Shear at the neutral axis, V Q / (I b): from 4/3 V/A of a solid bar to 2 V/A of a thin tube.
  const peak = ((4 / 3) * (r ** 2 + r * inner + inner ** 2)) / (r ** 2 + inner ** 2) / p.area;
  const bending = Math.atan2(f.bendingY, -f.bendingZ);
  const shearing = Math.atan2(f.shearZ, f.shearY);
  const point = (cos: number, sin: number): Point => {
    const y = r * cos;
    const z = r * sin;
    // Tangential shear along the way round: the shear force's part there, and the torque's.
    const flow = peak * (f.shearZ * cos - f.shearY * sin);
    return { y, z, normal: normalAt(f, p, y, z), shear: flow + torsion };
  };
  const at = (angle: number): Point => point(Math.cos(angle), Math.sin(angle));
  return [
    ...SIXTEENTHS.map(({ cos, sin }) => point(cos, sin)),
    at(bending),
    at(bending + Math.PI),
    at(shearing + Math.PI / 2),
    at(shearing - Math.PI / 2),
  ];
}

/** Sixteen places round a tube. */
const SIXTEENTHS = Array.from({ length: 16 }, (_, index) => ({
  cos: Math.cos((index * Math.PI) / 8),
  sin: Math.sin((index * Math.PI) / 8),
}));

function corners(section: Cornered, p: SectionProperties, flow: TorsionFlow, f: SectionForce): readonly Point[] {
  const { y: width, z: depth } = outsideOf(section);
  const [atSide, atCover] = [f.torque * flow.atSide, f.torque * flow.atCover];
  const [sideShear, coverShear] = shearOf(section, p, f);
  const y = width / 2;
  const z = depth / 2;
  const point = (py: number, pz: number, shear: number): Point => ({
    y: py,
    z: pz,
    normal: normalAt(f, p, py, pz),
    shear,
  });
  // In a closed section the torsion's flow runs through the corners too.
  const atCorner = section.shape === "flat-bar" ? 0 : Math.max(Math.abs(atSide), Math.abs(atCover));
  return [
    ...[-1, 1].flatMap((a) => [-1, 1].map((b) => point(a * y, b * z, atCorner))),
    ...[-1, 1].map((a) => point(a * y, 0, Math.abs(atSide) + Math.abs(sideShear))),
    ...[-1, 1].map((b) => point(0, b * z, Math.abs(atCover) + Math.abs(coverShear))),
  ];
}

type Cornered = Exclude<Section, { readonly shape: "round-tube" }>;

/** Shear of 1 N·m of torque at the middle of the sides (which lie along the depth) and of the covers, Pa. */
interface TorsionFlow {
  readonly atSide: number;
  readonly atCover: number;
}

function torsionFlow(section: Cornered): TorsionFlow {
  const { width, depth } = section;
  if (section.shape === "flat-bar") {
    const { atLongSide, atShortSide } = rectangleTorsion(width, depth);
    return depth >= width ? { atSide: atLongSide, atCover: atShortSide } : { atSide: atShortSide, atCover: atLongSide };
  }
  const { side, cover } = wallsOf(section);
  const flow = 1 / (2 * (width - side) * (depth - cover));
  return { atSide: flow / side, atCover: flow / cover };
}

const wallsOf = (section: Exclude<Cornered, { readonly shape: "flat-bar" }>) =>
  section.shape === "boxed-plate"
    ? { side: section.sideThickness, cover: section.coverThickness }
    : { side: section.wall, cover: section.wall };

/** Shear from shear force at the middle of the sides and of the covers, Pa. */
function shearOf(section: Cornered, p: SectionProperties, f: SectionForce): readonly [number, number] {
  const { width, depth } = section;
  if (section.shape === "flat-bar") return [(1.5 * f.shearZ) / p.area, (1.5 * f.shearY) / p.area];
  const { side, cover } = wallsOf(section);
  // First moment of half of the section about its middle: over two walls at the neutral axis.
  const qz = (width * depth ** 2 - (width - 2 * side) * (depth - 2 * cover) ** 2) / 8;
  const qy = (depth * width ** 2 - (depth - 2 * cover) * (width - 2 * side) ** 2) / 8;
  return [(f.shearZ * qz) / (p.iy * 2 * side), (f.shearY * qy) / (p.iz * 2 * cover)];
}
