import type { Vec3, Wheel } from "@armwright/engine";
import { BufferGeometry, Float32BufferAttribute, Group, type Matrix4, ShapeUtils, Vector2 } from "three";
import { type Frame, wheelUp } from "../frame.ts";
import { Batch } from "../kit/batch.ts";
import { Lines } from "../kit/lines.ts";
import { fillMaterial, outlineMaterial, sectionMaterial } from "../kit/materials.ts";
import { geometryOf, lathe, type ProfileSpot, prism } from "../kit/shape.ts";
import { add, along, cross, INCH, scale } from "../kit/space.ts";
import type { Part, Workshop } from "../part.ts";
import { barrelRuns, discRuns, nutSeat, outlineOf, tyreRuns } from "./wheel-profile.ts";

const NUTS = 5;
const LUGS = 30;

/** Tyre, rim and wheel nuts; cut on the axle plane where asked, the section hatched (tyre) or filled (thin sheet). */
export interface WheelPart extends Part {
  /** While true only the rings of tyre and rim are drawn. */
  seeThrough(isThrough: boolean): void;
}

export function wheelPart(workshop: Workshop): WheelPart {
  const object = new Group();
  const { inks, cut } = workshop;
  const fill = fillMaterial(inks, cut);
  const heavy = outlineMaterial(inks, 1.5, cut);
  const fine = outlineMaterial(inks, 1, cut);
  const hatched = sectionMaterial(inks, false);
  const solid = sectionMaterial(inks, true);
  const nuts = new Batch(geometryOf(prism(6)), [fill, fine], NUTS);
  object.add(nuts.object);
  let built: Built | undefined;

  return {
    object,
    show(frame) {
      const { wheel } = frame.car;
      if (!built || !isSame(built.wheel, wheel)) {
        built?.dispose();
        built = build(workshop, wheel, { fill, heavy, fine, hatched, solid });
        object.add(built.object);
      }
      built.place(frame);
      placeNuts(nuts, frame);
    },
    seeThrough(isThrough) {
      if (!built) return;
      built.solids.visible = !isThrough;
      built.rings.mesh.visible = isThrough;
    },
    dispose() {
      built?.dispose();
      nuts.dispose();
      for (const material of [fill, heavy, fine, hatched, solid]) material.dispose();
    },
  };
}

const SIZES = [
  "freeRadius",
  "sectionWidth",
  "shoulderRadius",
  "rimDiameter",
  "rimWidth",
  "rimInsideRadius",
  "offset",
] as const satisfies readonly (keyof Wheel)[];

const isSame = (a: Wheel, b: Wheel): boolean => SIZES.every((size) => a[size] === b[size]);

interface Built {
  readonly wheel: Wheel;
  readonly object: Group;
  readonly solids: Group;
  readonly rings: Lines;
  place(frame: Frame): void;
  dispose(): void;
}

type Materials = Readonly<Record<"fill" | "heavy" | "fine" | "hatched" | "solid", ReturnType<typeof fillMaterial>>>;

function build({ inks, sides, cut }: Workshop, wheel: Wheel, m: Materials): Built {
  const object = new Group();
  const [tyre, barrel, disc] = [tyreRuns(wheel), barrelRuns(wheel), discRuns(wheel)];
  const round = sides * 3;
  const turning = [
    new Batch(geometryOf(lathe(tyre, round)), [m.fill, m.heavy], 1),
    new Batch(geometryOf(lathe(barrel, round)), [m.fill, m.fine], 1),
    new Batch(geometryOf(lathe(disc, round)), [m.fill, m.fine], 1),
  ];
  const sections = [
    new Batch(sectionGeometry(outlineOf(tyre)), [m.hatched], 2),
    new Batch(sectionGeometry(outlineOf(barrel)), [m.solid], 2),
    new Batch(sectionGeometry(outlineOf(disc)), [m.solid], 2),
  ];
  const tread = treadLines(new Lines(inks, { colour: inks.uniforms.ink.value, width: 1, cut }), wheel);
  const edge = sectionLines(new Lines(inks, { colour: inks.uniforms.ink.value, width: 2.2 }), outlineOf(tyre));
  const rings = ringLines(new Lines(inks, { colour: inks.uniforms.ink.value, width: 1.6 }, 320), wheel);
  const solids = new Group();
  for (const batch of [...turning, ...sections]) solids.add(batch.object);
  for (const lines of [tread, edge]) solids.add(lines.mesh);
  object.add(solids, rings.mesh);
  return {
    wheel,
    object,
    solids,
    rings,
    place({ position, wheelMark, options }) {
      const { wheelCentre: at, spinAxis: s } = position;
      const side = cross(s, wheelMark);
      for (const batch of turning) {
        batch.begin();
        batch.put(at, wheelMark, side, s);
        batch.end();
      }
      setFrame(tread.mesh.matrix, at, wheelMark, side, s);
      const up = wheelUp(s);
      const ahead = cross(s, up);
      const isCut = options.cutWheel ?? true;
      for (const batch of sections) {
        batch.begin();
        if (isCut) {
          batch.put(at, up, ahead, s);
          batch.put(at, scale(up, -1), scale(ahead, -1), s);
        }
        batch.end();
      }
      edge.mesh.visible = isCut;
      setFrame(rings.mesh.matrix, at, wheelMark, side, s);
      setFrame(edge.mesh.matrix, at, up, ahead, s);
    },
    dispose() {
      object.removeFromParent();
      for (const each of [...turning, ...sections, tread, edge, rings]) each.dispose();
    },
  };
}

function placeNuts(nuts: Batch, { car, position, wheelMark }: Frame): void {
  const { wheelCentre, spinAxis } = position;
  const { radius, height } = nutSeat(car.wheel);
  const side = cross(spinAxis, wheelMark);
  const centre = along(wheelCentre, spinAxis, height);
  nuts.begin();
  for (let i = 0; i < NUTS; i += 1) {
    const angle = (2 * Math.PI * i) / NUTS;
    const out = add(scale(wheelMark, Math.cos(angle)), scale(side, Math.sin(angle)));
    nuts.along(along(centre, out, radius), spinAxis, 0.5 * INCH, 0.65 * INCH, 0, out);
  }
  nuts.end();
}

/** The profile as a flat face in the plane of radius (x) and spin axis (z). */
function sectionGeometry(outline: readonly ProfileSpot[]): BufferGeometry {
  const spots = outline.map(([r, z]) => new Vector2(r, z));
  const geometry = new BufferGeometry();
  geometry.setAttribute(
    "position",
    new Float32BufferAttribute(
      outline.flatMap(([r, z]) => [r, 0, z]),
      3,
    ),
  );
  geometry.setAttribute("crease", new Float32BufferAttribute(new Array(outline.length * 2).fill(0), 2));
  geometry.setIndex(ShapeUtils.triangulateShape(spots, []).flat());
  return geometry;
}

function sectionLines(lines: Lines, outline: readonly ProfileSpot[]): Lines {
  lines.begin();
  for (const way of [1, -1]) {
    const at = ([r, z]: ProfileSpot): Vec3 => ({ x: r * way, y: 0, z });
    lines.move(at(outline.at(-1)!));
    for (const spot of outline) lines.line(at(spot));
  }
  lines.end();
  return lines;
}

/** The wheel as a drawing shows it from the side: tread, bead and rim as circles, the nuts' circle with its nuts' places. */
function ringLines(lines: Lines, wheel: Wheel): Lines {
  const { radius, height } = nutSeat(wheel);
  const circle = (r: number, z: number): void =>
    lines.circle({ x: 0, y: 0, z }, { x: r, y: 0, z: 0 }, { x: 0, y: r, z: 0 }, 72);
  lines.begin();
  circle(wheel.freeRadius, 0);
  circle(wheel.rimDiameter / 2 + 0.55 * INCH, wheel.rimWidth / 2);
  circle(wheel.rimInsideRadius, wheel.rimWidth / 2);
  for (let i = 0; i < LUGS; i += 1) {
    const angle = (2 * Math.PI * i) / LUGS;
    const spot = (r: number): Vec3 => ({ x: r * Math.cos(angle), y: r * Math.sin(angle), z: 0 });
    lines.segment(spot(wheel.freeRadius), spot(wheel.freeRadius - 1.4 * INCH));
  }
  for (let i = 0; i < NUTS; i += 1) {
    const angle = (2 * Math.PI * i) / NUTS;
    const centre = { x: radius * Math.cos(angle), y: radius * Math.sin(angle), z: height };
    lines.circle(centre, { x: 0.4 * INCH, y: 0, z: 0 }, { x: 0, y: 0.4 * INCH, z: 0 }, 12);
  }
  lines.end();
  return lines;
}

/** Short strokes over both shoulders, so that the tyre is seen to turn. */
function treadLines(lines: Lines, { freeRadius, sectionWidth, shoulderRadius }: Wheel): Lines {
  const half = sectionWidth / 2;
  const core = freeRadius - shoulderRadius;
  lines.begin();
  for (let i = 0; i < LUGS; i += 1) {
    for (const way of [1, -1]) {
      const angle = (2 * Math.PI * (i + (way > 0 ? 0 : 0.5))) / LUGS;
      const spot = (r: number, z: number): Vec3 => ({ x: r * Math.cos(angle), y: r * Math.sin(angle), z: z * way });
      lines.move(spot(freeRadius, (half - shoulderRadius) * 0.55));
      for (let k = 0; k <= 4; k += 1) {
        const bend = (Math.PI / 2) * (1 - k / 5);
        lines.line(
          spot(core + shoulderRadius * Math.sin(bend), half - shoulderRadius + shoulderRadius * Math.cos(bend)),
        );
      }
    }
  }
  lines.end();
  return lines;
}

const setFrame = (matrix: Matrix4, at: Vec3, x: Vec3, y: Vec3, z: Vec3): Matrix4 =>
  matrix.set(x.x, y.x, z.x, at.x, x.y, y.y, z.y, at.y, x.z, y.z, z.z, at.z, 0, 0, 0, 1);
