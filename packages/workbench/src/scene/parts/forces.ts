import type { ForceArrow } from "@armwright/drawing";
import type { Vec3 } from "@armwright/engine";
import { Group } from "three";
import type { Frame } from "../frame.ts";
import { Lines } from "../kit/lines.ts";
import { along, length, scale, squareUnit, subtract, UP, unit } from "../kit/space.ts";
import type { Part, Workshop } from "../part.ts";

/** Of the largest force, m; and the head's length and half width. */
const LONGEST = 0.32;
const HEAD = 0.034;
const HEAD_HALF = 0.013;
const BARBS = 8;

type Arrow = Pick<ForceArrow, "at" | "force" | "end">;

/** From, to, and the end away from the place. */
export function arrowInSpace({ options }: Frame, { at, force, end }: Arrow) {
  const most = Math.max(1e-9, ...(options.forces ?? []).map((each) => length(each.force)));
  const way = scale(force, LONGEST / most);
  return end === "tip"
    ? { from: subtract(at, way), to: at, out: subtract(at, way) }
    : { from: at, to: along(at, way, 1), out: along(at, way, 1) };
}

/** Arrows of forces over the car, all to one scale, on an edge of paper. */
export function forcesPart({ inks }: Workshop): Part {
  const object = new Group();
  const edge = new Lines(inks, { colour: inks.uniforms.paper.value, width: 6, isOver: true }, 64);
  const shafts = new Lines(inks, { colour: inks.uniforms.ink.value, width: 2.6, isOver: true }, 64);
  const heads = new Lines(inks, { colour: inks.uniforms.ink.value, width: 2, isOver: true }, 256);
  shafts.mesh.renderOrder = 11;
  heads.mesh.renderOrder = 11;
  const all = [edge, shafts, heads];
  object.add(...all.map(({ mesh }) => mesh));
  return {
    object,
    show(frame) {
      for (const lines of all) lines.begin();
      for (const force of frame.options.forces ?? []) {
        const { from, to } = arrowInSpace(frame, force);
        const way = unit(subtract(to, from));
        if (length(subtract(to, from)) < 1e-4) continue;
        edge.segment(from, to);
        shafts.segment(from, to);
        drawHead(heads, to, way);
      }
      for (const lines of all) lines.end();
    },
    dispose() {
      for (const lines of all) lines.dispose();
    },
  };
}

function drawHead(heads: Lines, tip: Vec3, way: Vec3): void {
  const side = squareUnit(UP, way);
  const other = {
    x: way.y * side.z - way.z * side.y,
    y: way.z * side.x - way.x * side.z,
    z: way.x * side.y - way.y * side.x,
  };
  const foot = along(tip, way, -HEAD);
  for (let i = 0; i < BARBS; i += 1) {
    const angle = (2 * Math.PI * i) / BARBS;
    const out = along(scale(side, Math.cos(angle) * HEAD_HALF), other, Math.sin(angle) * HEAD_HALF);
    heads.segment(along(foot, out, 1), tip);
  }
  heads.circle(foot, scale(side, HEAD_HALF), scale(other, HEAD_HALF), 16);
}
