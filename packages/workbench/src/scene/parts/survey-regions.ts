import type { Vec3 } from "@armwright/engine";
import { Group } from "three";
import { Lines } from "../kit/lines.ts";
import type { Inks } from "../kit/materials.ts";

/** Where a surveyed point is, as three sections of its region, at ride height. */
export interface RegionPicture {
  readonly at: Vec3;
  /** Radii that span the region as three square ones span a sphere, m. */
  readonly radii: readonly [Vec3, Vec3, Vec3];
  readonly isHeld: boolean;
}

const ROUND = 36;

/** Certainty as ellipsoids, each drawn by three of its sections. */
export class SurveyRegionsPart {
  readonly object = new Group();
  private readonly plain: Lines;
  private readonly held: Lines;

  constructor(inks: Inks) {
    const { ink, hold } = inks.uniforms;
    this.plain = new Lines(inks, { colour: ink.value, width: 1.1, isOver: true }, ROUND * 3 * 16);
    this.held = new Lines(inks, { colour: hold.value, width: 2.2, isOver: true }, ROUND * 3);
    this.object.add(this.plain.mesh, this.held.mesh);
    this.show(null);
  }

  show(regions: readonly RegionPicture[] | null): void {
    for (const lines of [this.plain, this.held]) lines.begin();
    for (const { at, radii, isHeld } of regions ?? []) {
      const lines = isHeld ? this.held : this.plain;
      const [a, b, c] = radii;
      lines.circle(at, a, b, ROUND);
      lines.circle(at, b, c, ROUND);
      lines.circle(at, c, a, ROUND);
    }
    for (const lines of [this.plain, this.held]) lines.end();
  }

  dispose(): void {
    for (const lines of [this.plain, this.held]) lines.dispose();
  }
}
