import type { Vec3 } from "@armwright/engine";
import { BufferAttribute, DoubleSide, Group } from "three";
import { type Frame, mountNow, stateOf } from "../frame.ts";
import { Batch } from "../kit/batch.ts";
import { DASH, Lines } from "../kit/lines.ts";
import { fillMaterial, outlineMaterial, STATE } from "../kit/materials.ts";
import { bar, emptyShape, geometryOf } from "../kit/shape.ts";
import {
  along,
  apart,
  cross,
  FORWARD,
  INCH,
  LEFT,
  midway,
  squareTo,
  squareUnit,
  subtract,
  UP,
  unit,
} from "../kit/space.ts";
import type { Part, Workshop } from "../part.ts";

const PIECES = 24;
const HALF_WIDTH = 0.8 * INCH;
const HALF_THICK = 0.06 * INCH;
const CORNERS = [
  [1, 1],
  [-1, 1],
  [-1, -1],
  [1, -1],
] as const;

/** Limit strap: straight when tight, hanging in a curve of its own length when slack; stitched along its middle. */
export function strapPart({ inks }: Workshop): Part {
  const object = new Group();
  const fill = fillMaterial(inks);
  const outline = outlineMaterial(inks, 1);
  fill.side = DoubleSide;
  const band = bandGeometry();
  const bands = new Batch(band.geometry, [fill, outline], 1);
  const bolts = new Batch(geometryOf(bar(12)), [fill, outline], 2);
  const stitch = new Lines(inks, { colour: inks.uniforms.ink.value, width: 1.2, dash: DASH.stitch });
  object.add(bands.object, bolts.object, stitch.mesh);
  const spots: Vec3[] = [];
  return {
    object,
    show(frame) {
      const { strap } = frame.car;
      bands.begin();
      bolts.begin();
      stitch.begin();
      if (strap) {
        const upper = mountNow(frame, strap.upper);
        const lower = mountNow(frame, strap.lower);
        const { control, side } = hang(upper, lower, strap.length);
        spots.length = 0;
        for (let i = 0; i <= PIECES; i += 1) spots.push(curveAt(upper, control, lower, i / PIECES));
        const across = unit(cross(unit(subtract(lower, upper)), side));
        band.bend(spots, across);
        const state = strapState(frame);
        bands.put({ x: 0, y: 0, z: 0 }, FORWARD, LEFT, UP, state);
        for (const end of [upper, lower]) {
          bolts.between(along(end, side, -0.5 * INCH), along(end, side, 0.5 * INCH), 0.38 * INCH, state);
        }
        for (const way of [1, -1]) {
          spots.forEach((spot, i) => {
            const at = along(along(spot, bandNormal(spots, i, across), HALF_THICK * 1.6 * way), across, 0);
            if (i === 0) stitch.move(at);
            else stitch.line(at);
          });
        }
      }
      bands.end();
      bolts.end();
      stitch.end();
    },
    dispose() {
      bands.dispose();
      bolts.dispose();
      stitch.dispose();
      fill.dispose();
      outline.dispose();
    },
  };
}

const strapState = (frame: Frame) => {
  const state = stateOf(frame, "strap");
  return state === STATE.stop ? STATE.plain : state;
};

/** Control point of the parabola in which a strap of this length hangs, and the way it sags: downward, or out to the wheel. */
export function hang(upper: Vec3, lower: Vec3, length: number): { readonly control: Vec3; readonly side: Vec3 } {
  const chord = apart(upper, lower);
  const axis = unit(subtract(lower, upper));
  const down = squareTo({ x: 0, y: 0, z: -1 }, axis);
  const side = Math.hypot(down.x, down.y, down.z) > 0.05 ? unit(down) : squareUnit(LEFT, axis);
  const straight = midway(upper, lower);
  if (!(length > chord * 1.0005)) return { control: straight, side };
  const middle = midway(straight, upper.z < lower.z ? upper : lower, 0.25);
  let least = 0;
  let most = 2 * length;
  for (let i = 0; i < 32; i += 1) {
    const sag = (least + most) / 2;
    if (curveLength(upper, along(middle, side, sag), lower) < length) least = sag;
    else most = sag;
  }
  return { control: along(middle, side, (least + most) / 2), side };
}

export function curveAt(a: Vec3, control: Vec3, b: Vec3, t: number): Vec3 {
  const u = (1 - t) * (1 - t);
  const v = 2 * t * (1 - t);
  const w = t * t;
  return {
    x: u * a.x + v * control.x + w * b.x,
    y: u * a.y + v * control.y + w * b.y,
    z: u * a.z + v * control.z + w * b.z,
  };
}

function curveLength(a: Vec3, control: Vec3, b: Vec3): number {
  let sum = 0;
  let x = a.x;
  let y = a.y;
  let z = a.z;
  for (let i = 1; i <= PIECES; i += 1) {
    const { x: nx, y: ny, z: nz } = curveAt(a, control, b, i / PIECES);
    sum += Math.sqrt((nx - x) ** 2 + (ny - y) ** 2 + (nz - z) ** 2);
    x = nx;
    y = ny;
    z = nz;
  }
  return sum;
}

const bandNormal = (spots: readonly Vec3[], i: number, across: Vec3): Vec3 => {
  const way = subtract(spots[Math.min(PIECES, i + 1)]!, spots[Math.max(0, i - 1)]!);
  return unit(cross(way, across));
};

function bandGeometry() {
  const index: number[] = [];
  for (let i = 0; i < PIECES; i += 1) {
    for (let j = 0; j < 4; j += 1) {
      const a = i * 4 + j;
      const b = i * 4 + ((j + 1) % 4);
      index.push(a, b, b + 4, a, b + 4, a + 4);
    }
  }
  index.push(0, 2, 1, 0, 3, 2);
  const last = PIECES * 4;
  index.push(last, last + 1, last + 2, last, last + 2, last + 3);
  const geometry = geometryOf({ ...emptyShape(), index });
  const count = (PIECES + 1) * 4;
  const position = new BufferAttribute(new Float32Array(count * 3), 3);
  const normal = new BufferAttribute(new Float32Array(count * 3), 3);
  const flat = new BufferAttribute(new Float32Array(count * 3), 3);
  geometry.setAttribute("position", position);
  geometry.setAttribute("normal", flat);
  geometry.setAttribute("hull", normal);
  geometry.setAttribute("crease", new BufferAttribute(new Float32Array(count * 2), 2));
  return {
    geometry,
    bend(spots: readonly Vec3[], across: Vec3): void {
      let k = 0;
      spots.forEach((spot, i) => {
        const out = bandNormal(spots, i, across);
        for (const [u, v] of CORNERS) {
          position.setXYZ(
            k,
            spot.x + across.x * u * HALF_WIDTH + out.x * v * HALF_THICK,
            spot.y + across.y * u * HALF_WIDTH + out.y * v * HALF_THICK,
            spot.z + across.z * u * HALF_WIDTH + out.z * v * HALF_THICK,
          );
          normal.setXYZ(k, across.x * u + out.x * v, across.y * u + out.y * v, across.z * u + out.z * v);
          flat.setXYZ(k, out.x * v, out.y * v, out.z * v);
          k += 1;
        }
      });
      for (const attribute of [position, normal, flat]) attribute.needsUpdate = true;
    },
  };
}
