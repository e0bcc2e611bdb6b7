import type { JointKind, Vec3 } from "@armwright/engine";
import { Group, Matrix4, Vector3 } from "three";
import { type Frame, type ShaftNow, stateOf } from "../frame.ts";
import { Batch } from "../kit/batch.ts";
import { DASH, Lines } from "../kit/lines.ts";
import { fillMaterial, outlineMaterial, type State } from "../kit/materials.ts";
import { bar, cube, geometryOf, joined, lathe, moved, run, type Shape } from "../kit/shape.ts";
import { add, along, cross, INCH, scale } from "../kit/space.ts";
import type { Part, Workshop } from "../part.ts";

/** A joint's own size as a share of the shaft's diameter (common practice: a yoke is a little wider than its tube). */
const JOINT = 0.72;
const TUBE_FROM = 2.1;

/** Half shaft: output, two joints whose crosses and yokes turn, tube and sliding spline. */
export function shaftPart({ inks, sides }: Workshop): Part {
  const object = new Group();
  const fill = fillMaterial(inks);
  const outline = outlineMaterial(inks, 1);
  const materials = [fill, outline];
  const bars = new Batch(geometryOf(bar(sides)), materials);
  const yokes = new Batch(geometryOf(yokeShape(sides)), materials);
  const cups = new Batch(geometryOf(cupShape(sides)), materials);
  const batches = [bars, yokes, cups];
  const marks = new Lines(inks, { colour: inks.uniforms.ink.value, width: 1 });
  const centre = new Lines(inks, { colour: inks.uniforms.pencil.value, width: 1, dash: DASH.hinge });
  for (const each of batches) object.add(each.object);
  object.add(marks.mesh, centre.mesh);
  return {
    object,
    show(frame) {
      const { shaft, car } = frame;
      for (const each of [...batches, marks, centre]) each.begin();
      if (shaft && car.driveshaft) {
        const { outputAxis, inner, outer } = car.driveshaft;
        const size = car.driveshaft.diameter * JOINT;
        const tools = { bars, yokes, cups };
        const at = { inner: stateOf(frame, "driveshaft.inner"), outer: stateOf(frame, "driveshaft.outer") };
        const back = scale(shaft.axis, -1);
        placeJoint(
          tools,
          inner.kind,
          shaft.inner,
          size,
          at.inner,
          [outputAxis, shaft.yokes.output],
          [back, shaft.yokes.shaftInner],
        );
        placeJoint(
          tools,
          outer.kind,
          shaft.outer,
          size,
          at.outer,
          [scale(frame.position.spinAxis, -1), shaft.yokes.stub],
          [shaft.axis, shaft.yokes.shaftOuter],
        );
        // Output flange, inboard of the inner joint.
        const flange = along(shaft.inner, outputAxis, -size * TUBE_FROM);
        bars.between(along(flange, outputAxis, -1.1 * INCH), along(flange, outputAxis, -0.5 * INCH), 1.9 * INCH);
        bars.between(along(flange, outputAxis, -0.5 * INCH), along(flange, outputAxis, 0.15 * INCH), size * 0.8);
        placeTube(bars, marks, frame, shaft, size);
        centre.segment(along(shaft.inner, shaft.axis, -2 * INCH), along(shaft.outer, shaft.axis, 2 * INCH));
      }
      for (const each of [...batches, marks, centre]) each.end();
    },
    dispose() {
      for (const each of [...batches, marks, centre]) each.dispose();
      fill.dispose();
      outline.dispose();
    },
  };
}

interface Tools {
  readonly bars: Batch;
  readonly yokes: Batch;
  readonly cups: Batch;
}

/** The way a yoke looks toward its joint, and the line through its ears. */
type Yoke = readonly [axis: Vec3, ears: Vec3];

function placeJoint(
  { bars, yokes, cups }: Tools,
  kind: JointKind,
  at: Vec3,
  size: number,
  state: State,
  a: Yoke,
  b: Yoke,
): void {
  if (kind === "u-joint") {
    for (const [axis, ears] of [a, b]) {
      yokes.put(at, scale(ears, size), scale(cross(axis, ears), size), scale(axis, size), state);
      // The cross: one arm in each yoke.
      bars.between(along(at, ears, -size * 1.02), along(at, ears, size * 1.02), size * 0.3, state);
    }
    return;
  }
  // A constant-velocity joint: its housing on the outside, a boot down to the shaft.
  const [axis, ears] = a;
  cups.put(at, scale(ears, size * 1.55), scale(cross(axis, ears), size * 1.55), scale(axis, size * 1.55), state);
  bars.between(at, along(at, b[0], -size * TUBE_FROM), size * 0.62, state);
}

/**
 * Tube with its spline. The tube and its sleeve stay with the outer joint, the splined shaft with the inner one, so that
 * the sleeve slides over as much spline as is engaged.
 */
function placeTube(bars: Batch, marks: Lines, frame: Frame, shaft: ShaftNow, size: number): void {
  const { driveshaft } = frame.car;
  if (!driveshaft) return;
  const radius = driveshaft.diameter / 2;
  const on = (a: number): Vec3 => along(shaft.inner, shaft.axis, a);
  const outerEnd = shaft.length - size * TUBE_FROM;
  const { slip } = driveshaft;
  if (!slip) {
    bars.between(on(size * TUBE_FROM), on(outerEnd), radius, stateOf(frame, "driveshaft"));
    return;
  }
  const state = stateOf(frame, "driveshaft.slip");
  const designLength = frame.corner.shaft?.designLength ?? shaft.length;
  const sleeveLength = slip.engagement + Math.max(slip.pushInLeft ?? INCH, 0.5 * INCH);
  const mouthAtDesign = Math.max(0.36 * designLength, size * TUBE_FROM + (slip.pushInLeft ?? INCH) + 0.3 * INCH);
  const mouth = mouthAtDesign + shaft.length - designLength;
  const sleeveEnd = Math.min(mouth + sleeveLength, outerEnd);
  bars.between(on(size * TUBE_FROM), on(mouthAtDesign + slip.engagement), radius * 0.72, state);
  bars.between(on(mouth), on(sleeveEnd), radius * 1.22, state);
  bars.between(on(mouth), on(mouth + 0.45 * INCH), radius * 1.42, state);
  bars.between(on(sleeveEnd), on(outerEnd), radius, stateOf(frame, "driveshaft"));
  // Splines on what is bare of the shaft; they turn with it.
  const other = cross(shaft.axis, shaft.yokes.shaftInner);
  for (let i = 0; i < 8; i += 1) {
    const angle = (Math.PI * i) / 4;
    const out = add(scale(shaft.yokes.shaftInner, Math.cos(angle)), scale(other, Math.sin(angle)));
    const foot = scale(out, radius * 0.74);
    marks.segment(
      add(on(size * TUBE_FROM + 0.2 * INCH), foot),
      add(on(Math.max(mouth, size * TUBE_FROM + 0.2 * INCH)), foot),
    );
  }
}

/** A yoke of size 1: joint at the origin, ears along ±x, the shaft behind it at −z. */
function yokeShape(sides: number): Shape {
  const at = (x: number, y: number, z: number, sx: number, sy: number, sz: number): Matrix4 =>
    new Matrix4().makeScale(sx, sy, sz).setPosition(x, y, z);
  const ear = (side: number): Shape =>
    joined(moved(cube(), at(side * 0.92, 0, -0.62, 0.17, 0.46, 0.72)), earEnd(sides, side));
  return joined(
    ear(1),
    ear(-1),
    moved(cube(), at(0, 0, -1.42, 1.09, 0.5, 0.2)),
    moved(bar(sides), at(0, 0, -2.12, 0.72, 0.72, 0.6)),
  );
}

/** The round end of an ear, about the line through both. */
const earEnd = (sides: number, side: number): Shape =>
  moved(
    bar(sides),
    new Matrix4()
      .makeRotationY(Math.PI / 2)
      .scale(new Vector3(0.46, 0.46, 0.34))
      .setPosition(side * 0.92 - 0.17, 0, 0),
  );

/** Housing of a constant-velocity joint of size 1 about z, open toward +z. */
const cupShape = (sides: number): Shape =>
  lathe(
    [
      run([0, -1.25], [0.55, -1.25]),
      run([0.55, -1.25], [0.55, -0.85]),
      run([0.55, -0.85], [1, -0.6]),
      run([1, -0.6], [1, 0.55]),
      run([1, 0.55], [0.86, 0.62]),
      run([0.86, 0.62], [0.62, 0.95], [0.66, 1.05], [0.5, 1.2], [0.54, 1.3], [0.42, 1.4]),
      run([0.42, 1.4], [0, 1.4]),
    ],
    sides,
  );
