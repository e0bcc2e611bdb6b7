import type { KeepOut, KeepOutBox, KeepOutHalfSpace, KeepOutTube, Vec3 } from "@armwright/engine";
import { Group } from "three";
import { DASH, Lines } from "../kit/lines.ts";
import { along, cross, INCH, scale, squareUnit, subtract, UP, unit } from "../kit/space.ts";
import type { Part, Workshop } from "../part.ts";

const ROUND = 28;
const FACE = 14 * INCH;
const MESH = 4 * INCH;

/** Keep-outs: dashed edges in pencil, seen through; a half-space as a net on its face with strokes into it. */
export function keepOutsPart({ inks }: Workshop): Part {
  const object = new Group();
  const lines = new Lines(inks, { colour: inks.uniforms.pencil.value, width: 1.3, dash: DASH.keepOut }, 256);
  const strokes = new Lines(inks, { colour: inks.uniforms.pencil.value, width: 0.8 }, 64);
  object.add(lines.mesh, strokes.mesh);
  let drawn: readonly KeepOut[] | undefined;
  return {
    object,
    show({ car }) {
      if (car.keepOuts === drawn) return;
      drawn = car.keepOuts;
      lines.begin();
      strokes.begin();
      for (const keepOut of car.keepOuts) {
        if (keepOut.shape === "box") drawBox(lines, keepOut);
        else if (keepOut.shape === "tube") drawTube(lines, keepOut);
        else drawFace(lines, strokes, keepOut);
      }
      lines.end();
      strokes.end();
    },
    dispose() {
      lines.dispose();
      strokes.dispose();
    },
  };
}

/** Where a keep-out's name is written. */
export function keepOutMiddle(keepOut: KeepOut): Vec3 {
  if (keepOut.shape === "box") return keepOut.centre;
  if (keepOut.shape === "tube") return along(keepOut.from, subtract(keepOut.to, keepOut.from), 0.5);
  return keepOut.point;
}

function drawBox(lines: Lines, { centre, half, axisX, axisY }: KeepOutBox): void {
  const axisZ = cross(axisX, axisY);
  const corner = (i: number, j: number, k: number): Vec3 =>
    along(along(along(centre, axisX, half.x * i), axisY, half.y * j), axisZ, half.z * k);
  for (const i of [-1, 1]) {
    for (const j of [-1, 1]) {
      lines.segment(corner(-1, i, j), corner(1, i, j));
      lines.segment(corner(i, -1, j), corner(i, 1, j));
      lines.segment(corner(i, j, -1), corner(i, j, 1));
    }
  }
}

function drawTube(lines: Lines, { from, to, diameter }: KeepOutTube): void {
  const axis = unit(subtract(to, from));
  const a = scale(squareUnit(UP, axis), diameter / 2);
  const b = cross(axis, a);
  for (const end of [from, to]) lines.circle(end, a, b, ROUND);
  for (let i = 0; i < 4; i += 1) {
    const out = i === 0 ? a : i === 1 ? b : i === 2 ? scale(a, -1) : scale(b, -1);
    lines.segment(along(from, out, 1), along(to, out, 1));
  }
}

function drawFace(lines: Lines, strokes: Lines, { point, normal }: KeepOutHalfSpace): void {
  const up = squareUnit(UP, normal);
  const side = cross(normal, up);
  const at = (u: number, v: number): Vec3 => along(along(point, side, u), up, v);
  const count = Math.round(FACE / MESH);
  for (let i = -count; i <= count; i += 1) {
    const u = i * MESH;
    lines.segment(at(u, -count * MESH), at(u, count * MESH));
    lines.segment(at(-count * MESH, u), at(count * MESH, u));
    strokes.segment(at(u, count * MESH), along(at(u, count * MESH), normal, -1.5 * INCH));
  }
}
