import { Color, Group, Plane, Scene as ThreeScene, Vector3, type WebGLRenderer } from "three";
import type { Eye } from "./eye.ts";
import { type Frame, wheelUp } from "./frame.ts";
import { type Inks, makeInks, setInks } from "./kit/materials.ts";
import { cross, dot } from "./kit/space.ts";
import type { Tokens } from "./kit/tokens.ts";
import type { Part } from "./part.ts";
import { armFramePart } from "./parts/arm-frame.ts";
import { bumpStopPart } from "./parts/bump-stop.ts";
import { forcesPart } from "./parts/forces.ts";
import { ghostsPart } from "./parts/ghosts.ts";
import { groundPart } from "./parts/ground.ts";
import { keepOutsPart } from "./parts/keep-outs.ts";
import { membersPart } from "./parts/members.ts";
import { shaftPart } from "./parts/shaft.ts";
import { shockPart } from "./parts/shock.ts";
import { spindlePart } from "./parts/spindle.ts";
import { strapPart } from "./parts/strap.ts";
import { type WheelPart, wheelPart } from "./parts/wheel.ts";
import type { Quality } from "./types.ts";

const FAR_AWAY = 1000;
/** Cosine between the line of sight and the spin axis from which on the wheel is seen through. */
const SIDE_ON = 0.8;
const FACETS: Readonly<Record<Quality, number>> = { high: 24, low: 14 };

/** All solids and lines of the car, and how they are drawn: cut where the wheel is, mirrored for the other side. */
export class Stage {
  readonly inks: Inks = makeInks();
  /** Drawn once, over or under both sides. */
  readonly once = new Group();
  private readonly scene = new ThreeScene();
  /** Drawn again, mirrored, where both sides are shown. */
  private readonly corner = new Group();
  private readonly colours = { grid: new Color(), zero: new Color() };
  private readonly cut = new Plane(new Vector3(1, 0, 0), FAR_AWAY);
  private wheel: WheelPart | null = null;
  private parts: readonly Part[] = [];
  private frame: Frame | null = null;

  constructor(quality: Quality) {
    for (const each of [this.scene, this.corner, this.once]) each.matrixAutoUpdate = false;
    this.scene.add(this.corner, this.once);
    this.build(quality);
  }

  setColours(tokens: Tokens): void {
    setInks(this.inks, tokens);
    this.colours.grid.copy(tokens.grid);
    this.colours.zero.copy(tokens.gridZero);
  }

  /** Makes all parts anew, coarser or finer. */
  build(quality: Quality): void {
    this.dispose();
    const workshop = { inks: this.inks, sides: FACETS[quality], cut: [this.cut] };
    this.wheel = wheelPart(workshop);
    const whole = [
      groundPart(workshop, this.colours),
      keepOutsPart(workshop),
      armFramePart(workshop),
      forcesPart(workshop),
    ];
    const mirrored = [
      ghostsPart(workshop),
      this.wheel,
      spindlePart(workshop),
      membersPart(workshop),
      shaftPart(workshop),
      shockPart(workshop),
      strapPart(workshop),
      bumpStopPart(workshop),
    ];
    for (const { object } of whole) this.once.add(object);
    for (const { object } of mirrored) this.corner.add(object);
    this.parts = [...whole, ...mirrored];
    if (this.frame) this.show(this.frame);
  }

  show(frame: Frame): void {
    this.frame = frame;
    for (const part of this.parts) part.show(frame);
  }

  draw(renderer: WebGLRenderer, eye: Eye): void {
    const { frame } = this;
    this.inks.uniforms.scale.value = eye.scale * this.inks.uniforms.pen.value;
    // Looked at from outside, along its axis, a wheel hides the whole corner: then only its rings are drawn.
    const isThrough = isCut(frame) && frame !== null && dot(eye.back, frame.position.spinAxis) > SIDE_ON;
    this.wheel?.seeThrough(isThrough);
    renderer.clear();
    if (frame?.options.bothSides) {
      this.once.visible = false;
      this.drawSide(renderer, eye, -1);
      this.once.visible = true;
    }
    this.drawSide(renderer, eye, 1);
  }

  dispose(): void {
    for (const part of this.parts) {
      part.object.removeFromParent();
      part.dispose();
    }
    this.parts = [];
  }

  /** Draws one side of the car: 1 as it is, −1 mirrored. */
  private drawSide(renderer: WebGLRenderer, eye: Eye, sign: 1 | -1): void {
    this.corner.matrix.makeScale(1, sign, 1);
    this.corner.matrixWorldNeedsUpdate = true;
    this.placeCut(eye, sign);
    renderer.render(this.scene, eye.camera);
  }

  /** The cut takes away the half of the wheel that is nearer to the eye. */
  private placeCut(eye: Eye, sign: 1 | -1): void {
    const { frame, cut } = this;
    if (!frame || !isCut(frame)) {
      cut.normal.set(1, 0, 0);
      cut.constant = FAR_AWAY;
      return;
    }
    const { spinAxis, wheelCentre: c } = frame.position;
    const ahead = cross(spinAxis, wheelUp(spinAxis));
    cut.normal.set(ahead.x, ahead.y * sign, ahead.z);
    if (cut.normal.dot(eye.back) > 1e-6) cut.normal.negate();
    cut.constant = -(cut.normal.x * c.x + cut.normal.y * c.y * sign + cut.normal.z * c.z);
  }
}

const isCut = (frame: Frame | null): boolean => frame?.options.cutWheel ?? true;
