import { type Cycle, type Position, placeMember, rowAt, type Study, type Vec3 } from "@armwright/engine";
import { Group } from "three";
import { type Frame, wheelUp } from "../frame.ts";
import { DASH, Lines } from "../kit/lines.ts";
import { cross, INCH, scale } from "../kit/space.ts";
import type { Part, Workshop } from "../part.ts";

/** Solved positions in pencil: the tyre's edges, members, shaft and a cross at the wheel centre; and the centre's path. */
export function ghostsPart({ inks }: Workshop): Part {
  const object = new Group();
  const colour = inks.uniforms.pencil.value;
  const wheels = new Lines(inks, { colour, width: 1.25, dash: DASH.ghost }, 256);
  const crosses = new Lines(inks, { colour, width: 1.25 }, 16);
  const path = new Lines(inks, { colour, width: 1.6, dash: DASH.dots, isOver: true }, 64);
  object.add(wheels.mesh, crosses.mesh, path.mesh);
  let followed: Study | undefined;
  return {
    object,
    show(frame) {
      wheels.begin();
      crosses.begin();
      for (const { position } of frame.options.ghosts ?? []) {
        drawWheel(wheels, frame, position);
        drawMembers(wheels, frame, position);
        drawCross(crosses, position.wheelCentre);
      }
      wheels.end();
      crosses.end();
      if (frame.study === followed) return;
      followed = frame.study;
      path.begin();
      const { cycle } = frame.study;
      for (let i = 0; i < cycle.travels.length; i += 1) {
        const at = centreAt(frame.study, cycle, i);
        if (i === 0) path.move(at);
        else path.line(at);
      }
      path.end();
    },
    dispose() {
      for (const each of [wheels, crosses, path]) each.dispose();
    },
  };
}

function centreAt({ quantities, corner }: Study, cycle: Cycle, index: number): Vec3 {
  const row = rowAt(cycle, index);
  const read = (id: string): number => quantities.find((quantity) => quantity.id === id)?.read(row, corner) ?? 0;
  return { x: read("wheelX"), y: read("wheelY"), z: read("wheelZ") };
}

function drawWheel(lines: Lines, { car }: Frame, { wheelCentre: c, spinAxis: s }: Position): void {
  const { freeRadius, sectionWidth, shoulderRadius } = car.wheel;
  const up = wheelUp(s);
  const ahead = cross(s, up);
  const spot = (r: number, out: number): Vec3 => ({
    x: c.x + up.x * r + s.x * out,
    y: c.y + up.y * r + s.y * out,
    z: c.z + up.z * r + s.z * out,
  });
  lines.circle(c, scale(up, freeRadius), scale(ahead, freeRadius), 48);
  // The tyre's outline on the axle plane.
  const flat = sectionWidth / 2 - shoulderRadius;
  const core = freeRadius - shoulderRadius;
  lines.move(spot(freeRadius, -flat));
  for (const [r, out, from] of [
    [core, flat, 0],
    [-core, flat, 1],
    [-core, -flat, 2],
    [core, -flat, 3],
  ] as const) {
    for (let i = 0; i <= 5; i += 1) {
      const angle = (Math.PI / 2) * (from + i / 5);
      lines.line(spot(r + shoulderRadius * Math.cos(angle), out + shoulderRadius * Math.sin(angle)));
    }
  }
  lines.line(spot(freeRadius, -flat));
}

function drawMembers(lines: Lines, { corner, car }: Frame, position: Position): void {
  for (const member of corner.members) {
    const [a, b] = placeMember(position, member);
    lines.segment(a, b);
  }
  const pose = position.poses.spindle;
  if (!car.driveshaft || !pose) return;
  const { rotation: r, translation: t } = pose;
  const p = car.driveshaft.outer.centre;
  lines.segment(car.driveshaft.inner.centre, {
    x: r[0] * p.x + r[1] * p.y + r[2] * p.z + t.x,
    y: r[3] * p.x + r[4] * p.y + r[5] * p.z + t.y,
    z: r[6] * p.x + r[7] * p.y + r[8] * p.z + t.z,
  });
}

function drawCross(lines: Lines, c: Vec3): void {
  const reach = 1.2 * INCH;
  for (const axis of ["x", "y", "z"] as const) {
    lines.segment({ ...c, [axis]: c[axis] - reach }, { ...c, [axis]: c[axis] + reach });
  }
}
