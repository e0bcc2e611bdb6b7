import { BufferAttribute, Group } from "three";
import { mountNow, stateOf } from "../frame.ts";
import { Batch } from "../kit/batch.ts";
import { fillMaterial, outlineMaterial } from "../kit/materials.ts";
import { bar, emptyShape, geometryOf } from "../kit/shape.ts";
import { along, apart, cross, FORWARD, INCH, squareUnit, subtract, unit } from "../kit/space.ts";
import type { Part, Workshop } from "../part.ts";

const TURNS = 10;
/** Parts of a usual coilover; the car gives its lengths and largest diameter. */
const EYE = { radius: 0.75 * INCH, width: 1.3 * INCH };
const SEAT = 0.35 * INCH;

/** Coilover: body at its upper end, rod at its lower one, and where the car has springs, coils that close up between two seats. */
export function shockPart({ inks, sides }: Workshop): Part {
  const object = new Group();
  const fill = fillMaterial(inks);
  const outline = outlineMaterial(inks, 1);
  const materials = [fill, outline];
  const bars = new Batch(geometryOf(bar(sides)), materials);
  const coil = new Coil(Math.max(14, sides), sides > 14 ? 8 : 6);
  const coils = new Batch(coil.geometry, materials, 1);
  object.add(bars.object, coils.object);
  return {
    object,
    show(frame) {
      const { shock } = frame.car;
      bars.begin();
      coils.begin();
      if (shock) {
        const state = stateOf(frame, "shock");
        const upper = mountNow(frame, shock.upper);
        const lower = mountNow(frame, shock.lower);
        const length = apart(upper, lower);
        const axis = unit(subtract(lower, upper));
        const on = (a: number) => along(upper, axis, a);
        const coilRadius = shock.diameter / 2;
        const wire = Math.min(0.3 * INCH, coilRadius * 0.25);
        const body = coilRadius - 2.4 * wire;
        // The body is as long as leaves the rod bare by a usual bump rubber at the shortest length.
        const bodyEnd = Math.min(shock.shortest - 2.4 * INCH, length - 1.4 * INCH);
        bars.between(on(0.9 * INCH), on(bodyEnd), body, state);
        bars.between(on(bodyEnd), on(bodyEnd + 0.3 * INCH), body * 1.08, state);
        bars.between(on(bodyEnd), on(length), body * 0.36, state);
        const topSeat = Math.min(2 * INCH, shock.shortest * 0.15);
        const lowSeat = length - 1.5 * INCH;
        const bolt = squareUnit(FORWARD, axis);
        for (const eye of [upper, lower]) {
          bars.between(along(eye, bolt, -EYE.width / 2), along(eye, bolt, EYE.width / 2), EYE.radius, state);
          bars.between(along(eye, bolt, -EYE.width), along(eye, bolt, EYE.width), EYE.radius * 0.42, state);
        }
        if (shock.springs) {
          bars.between(on(topSeat - SEAT), on(topSeat), coilRadius * 1.04, state);
          bars.between(on(lowSeat), on(lowSeat + SEAT), coilRadius * 1.04, state);
          coil.wind(coilRadius - wire, wire, Math.max(lowSeat - topSeat, 4 * wire));
          coils.put(on(topSeat), bolt, cross(axis, bolt), axis, state);
        }
      }
      bars.end();
      coils.end();
    },
    dispose() {
      bars.dispose();
      coils.dispose();
      fill.dispose();
      outline.dispose();
    },
  };
}

/** A coil about z from 0 to its length, its end turns laid flat as on a ground spring. */
class Coil {
  readonly geometry;
  private readonly around: number;
  private readonly steps: number;
  private readonly position: BufferAttribute;
  private readonly normal: BufferAttribute;
  private radius = 0;
  private wire = 0;
  private length = 0;

  constructor(perTurn: number, around: number) {
    this.around = around;
    this.steps = TURNS * perTurn;
    const vertices = (this.steps + 1) * around;
    const index: number[] = [];
    for (let i = 0; i < this.steps; i += 1) {
      for (let j = 0; j < around; j += 1) {
        const a = i * around + j;
        const b = i * around + ((j + 1) % around);
        index.push(a, a + around, b + around, a, b + around, b);
      }
    }
    this.geometry = geometryOf({ ...emptyShape(), index });
    this.position = new BufferAttribute(new Float32Array(vertices * 3), 3);
    this.normal = new BufferAttribute(new Float32Array(vertices * 3), 3);
    this.geometry.setAttribute("position", this.position);
    this.geometry.setAttribute("normal", this.normal);
    this.geometry.setAttribute("hull", this.normal);
    this.geometry.setAttribute("crease", new BufferAttribute(new Float32Array(vertices * 2), 2));
  }

  wind(radius: number, wire: number, length: number): void {
    if (radius === this.radius && wire === this.wire && length === this.length) return;
    this.radius = radius;
    this.wire = wire;
    this.length = length;
    const position = this.position.array;
    const normal = this.normal.array;
    const flat = 0.75 / TURNS;
    const rise = length - 2 * wire;
    let k = 0;
    for (let i = 0; i <= this.steps; i += 1) {
      const t = i / this.steps;
      const angle = t * TURNS * 2 * Math.PI;
      const c = Math.cos(angle);
      const s = Math.sin(angle);
      // Height: level in the flat turns, even pitch between.
      const up = Math.min(1, Math.max(0, (t - flat) / (1 - 2 * flat)));
      const height = wire + rise * up;
      const pitch = up > 0 && up < 1 ? rise / ((1 - 2 * flat) * TURNS * 2 * Math.PI) : 0;
      // Square to the wire: outward, and upward leaned by the pitch.
      const size = Math.hypot(radius, pitch);
      const lean = pitch / size;
      const stand = radius / size;
      for (let j = 0; j < this.around; j += 1) {
        const about = (2 * Math.PI * j) / this.around;
        const out = Math.cos(about);
        const over = Math.sin(about);
        const nx = out * c + over * lean * s;
        const ny = out * s - over * lean * c;
        const nz = over * stand;
        normal[k] = nx;
        normal[k + 1] = ny;
        normal[k + 2] = nz;
        position[k] = radius * c + wire * nx;
        position[k + 1] = radius * s + wire * ny;
        position[k + 2] = height + wire * nz;
        k += 3;
      }
    }
    this.position.needsUpdate = true;
    this.normal.needsUpdate = true;
  }
}
