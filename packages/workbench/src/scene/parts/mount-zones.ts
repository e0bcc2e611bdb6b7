import { type BodyId, type Position, placeOn, type Vec3 } from "@armwright/engine";
import { Group } from "three";
import { DASH, Lines } from "../kit/lines.ts";
import type { Inks } from "../kit/materials.ts";
import { along, apart, cross, scale, squareUnit, subtract, UP, unit } from "../kit/space.ts";
import { type CloudPicture, MountCloud } from "./mount-cloud.ts";

/** A zone in which a mount may be: its edges in the design position, on the body that carries them. */
export interface ZonePicture {
  readonly edges: readonly (readonly [Vec3, Vec3])[];
  readonly on: BodyId;
  readonly isHeld: boolean;
}

/** A shock as it would hang. */
export interface GhostShock {
  readonly upper: Vec3;
  readonly lower: Vec3;
  readonly on: BodyId;
  readonly radius: number;
}

/** What the search for mounts shows in space. */
export interface MountsPicture {
  readonly zones: readonly ZonePicture[];
  readonly clouds: readonly CloudPicture[];
  readonly ghost: GhostShock | null;
}

/** Share of an edge, from either corner, that is drawn heavy. */
const BRACKET = 0.14;
const RINGS = 5;
const ROUND = 28;

/** Zones as bracketed boxes, the region as dots, and a shock that is tried in pencil. */
export class MountZonesPart {
  readonly object = new Group();
  private readonly hairs: Lines;
  private readonly brackets: Lines;
  private readonly held: Lines;
  private readonly ghost: Lines;
  private readonly cloud: MountCloud;
  private picture: MountsPicture | null = null;

  constructor(inks: Inks) {
    const { ink, pencil, hold } = inks.uniforms;
    this.hairs = new Lines(inks, { colour: ink.value, width: 0.7, dash: DASH.dots }, 64);
    this.brackets = new Lines(inks, { colour: ink.value, width: 2.2 }, 96);
    this.held = new Lines(inks, { colour: hold.value, width: 2.2, isOver: true }, 96);
    this.ghost = new Lines(inks, { colour: pencil.value, width: 1.6, dash: DASH.ghost, isOver: true }, 160);
    this.cloud = new MountCloud(inks);
    const lines = [this.hairs, this.brackets, this.held, this.ghost];
    this.object.add(...lines.map(({ mesh }) => mesh), this.cloud.object);
    this.draw(undefined);
  }

  show(picture: MountsPicture | null, now: Position | undefined): void {
    this.picture = picture;
    this.cloud.show(picture?.clouds ?? NO_CLOUDS, now);
    this.draw(now);
  }

  /** The wheel has moved: what rides on arm or spindle goes with it. */
  place(now: Position): void {
    if (!this.picture) return;
    this.cloud.place(now);
    this.draw(now);
  }

  dispose(): void {
    for (const each of [this.hairs, this.brackets, this.held, this.ghost, this.cloud]) each.dispose();
  }

  private draw(now: Position | undefined): void {
    const all = [this.hairs, this.brackets, this.held, this.ghost];
    for (const lines of all) lines.begin();
    for (const { edges, on, isHeld } of this.picture?.zones ?? []) {
      const heavy = isHeld ? this.held : this.brackets;
      for (const edge of edges) {
        const [a, b] = edge.map((point) => (now ? placeOn(now, point, on) : point)) as [Vec3, Vec3];
        this.hairs.segment(a, b);
        const way = subtract(b, a);
        heavy.segment(a, along(a, way, BRACKET));
        heavy.segment(b, along(b, way, -BRACKET));
      }
    }
    const ghost = this.picture?.ghost;
    if (ghost) drawShock(this.ghost, ghost, now);
    for (const lines of all) lines.end();
  }
}

const NO_CLOUDS: readonly CloudPicture[] = [];

function drawShock(lines: Lines, { upper, lower, on, radius }: GhostShock, now: Position | undefined): void {
  const foot = now ? placeOn(now, lower, on) : lower;
  const way = unit(subtract(foot, upper));
  const length = apart(upper, foot);
  const a = scale(squareUnit(UP, way), radius);
  const b = scale(cross(way, squareUnit(UP, way)), radius);
  const inset = Math.min(radius, length / 4);
  for (let i = 0; i < RINGS; i += 1)
    lines.circle(along(upper, way, inset + ((length - 2 * inset) * i) / (RINGS - 1)), a, b, ROUND);
  for (const out of [a, b, scale(a, -1), scale(b, -1)])
    lines.segment(along(along(upper, way, inset), out, 1), along(along(upper, way, length - inset), out, 1));
  lines.segment(upper, foot);
}
