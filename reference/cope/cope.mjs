// Cope lines by a general solid-geometry library (manifold-3d from npm): a hollow tube less the tubes it sits on, cut open along
// planes through its axis. Writes cases and lines, metres and radians, to standard output.
// Usage: node cope.mjs FOLDER_WITH_NODE_MODULES > cope.json
import { pathToFileURL } from "node:url";

const { default: start } = await import(pathToFileURL(`${process.argv[2]}/node_modules/manifold-3d/manifold.js`).href);
const wasm = await start();
wasm.setup();
const { Manifold } = wasm;

/** Sides of a round: with a radius of 25 mm the flats lie at most 1 µm inside the circle. */
const SIDES = 360;
const LENGTH = 400;
const ANGLES = 24;

/** A rotation (rows) that takes the axis `axis` onto y, and `seam` onto x: the tube stands upright, seam to the right. */
const upright = (axis, seam) => {
  const [x, y] = [seam, axis];
  const z = cross(x, y);
  return [x, y, z];
};
const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const unit = (a) => a.map((value) => value / Math.sqrt(dot(a, a)));
const times = (rows, v) => rows.map((row) => dot(row, v));

/** A cylinder about a line, mm; the library's own stands on z. */
function cylinder(point, direction, radius, length) {
  const z = unit(direction);
  const helper = Math.abs(z[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  const x = unit(cross(helper, z));
  const y = cross(z, x);
  const round = Manifold.cylinder(length, radius, radius, SIDES, true);
  // Column-major 4×4.
  return round.transform([...x, 0, ...y, 0, ...z, 0, ...point, 1]);
}

function copeLine({ outward, seam, outer, wall, onto }) {
  const rows = upright(outward, seam);
  const up = [0, 1, 0];
  const tube = cylinder([0, 0, 0], up, outer, LENGTH).subtract(cylinder([0, 0, 0], up, outer - wall, LENGTH * 2));
  let left = tube;
  for (const { point, direction, radius } of onto) {
    left = left.subtract(cylinder(times(rows, point), times(rows, direction), radius, LENGTH * 4));
  }
  return Array.from({ length: ANGLES }, (_, index) => {
    const angle = (2 * Math.PI * index) / ANGLES;
    // The seam lies along x; a right-handed turn about the axis (y) goes from x toward −z: turned back onto x by −angle.
    const opened = left.rotate([0, (-angle * 180) / Math.PI, 0]).slice(0);
    const strips = opened.toPolygons().filter((polygon) => polygon.every(([x]) => x > 0));
    const body = strips.find((polygon) => polygon.some(([, y]) => y < -LENGTH / 2 + 1e-6));
    const top = body.filter(([, y]) => y > -LENGTH / 2 + 1e-3).map(([, y]) => y);
    return Math.min(...top);
  });
}

const tilted = (degrees, turn = 0) => {
  const a = (degrees * Math.PI) / 180;
  const t = (turn * Math.PI) / 180;
  return [-Math.cos(a), -Math.sin(a) * Math.sin(t), -Math.sin(a) * Math.cos(t)];
};
const seamOf = (outward) => {
  const x = [1, 0, 0];
  return unit(x.map((value, k) => value - dot(x, outward) * outward[k]));
};
const header = (radius, point = [0, 0, 0], direction = [1, 0, 0]) => ({ point, direction: unit(direction), radius });
const CASES = [
  { name: "square, thinner onto thicker", outward: tilted(90), outer: 19.05, wall: 2.41, onto: [header(22.225)] },
  { name: "square, equal", outward: tilted(90), outer: 19.05, wall: 3.05, onto: [header(19.05)] },
  { name: "60 degrees", outward: tilted(60), outer: 19.05, wall: 3.05, onto: [header(22.225)] },
  { name: "35 degrees, 6 mm off", outward: tilted(35), outer: 15.875, wall: 2.41, onto: [header(22.225, [0, 6, 0])] },
  {
    name: "75 degrees, two tubes",
    outward: tilted(75),
    outer: 15.875,
    wall: 2.41,
    onto: [header(22.225), header(19.05, [5, 4, 3], [0.2, 1, 0.1])],
  },
  {
    name: "50 degrees, skew, three tubes",
    outward: tilted(50, 20),
    outer: 12.7,
    wall: 2.11,
    onto: [header(19.05), header(12.7, [-8, 2, 4], [0.4, 0.9, -0.2]), header(15.875, [3, -6, 2], [-0.5, 0.5, 0.4])],
  },
];
const results = CASES.map((each) => {
  const seam = seamOf(each.outward);
  const line = copeLine({ ...each, seam });
  const m = (v) => v.map((value) => value / 1000);
  return {
    name: each.name,
    outward: each.outward,
    seam,
    outerRadius: each.outer / 1000,
    wall: each.wall / 1000,
    onto: each.onto.map(({ point, direction, radius }) => ({ point: m(point), direction, radius: radius / 1000 })),
    cuts: line.map((value) => Number((value / 1000).toFixed(9))),
  };
});
process.stdout.write(`${JSON.stringify({ library: "manifold-3d 3.5.4", sides: SIDES, cases: results }, null, 1)}\n`);
