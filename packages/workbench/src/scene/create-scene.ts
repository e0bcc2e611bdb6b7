import type { Position, Study, Vec3 } from "@armwright/engine";
import { LinearSRGBColorSpace, WebGLRenderer } from "three";
import { Eye, type EyeState, VIEWS } from "./eye.ts";
import { ballsOf } from "./fit-balls.ts";
import { type Frame, frameOf } from "./frame.ts";
import { type GestureTargets, listen } from "./gestures.ts";
import { Hand } from "./hand.ts";
import { readTokens } from "./kit/tokens.ts";
import { barsOf, boxesOf } from "./label-room.ts";
import { Labels } from "./labels.ts";
import { ChassisMeshPart } from "./parts/chassis-mesh.ts";
import { GripMarks } from "./parts/grip-marks.ts";
import { HoldAxes } from "./parts/hold-axes.ts";
import { MountZonesPart } from "./parts/mount-zones.ts";
import { type RegionPicture, SurveyRegionsPart } from "./parts/survey-regions.ts";
import { labelsOf } from "./scene-labels.ts";
import { Stage } from "./stage.ts";
import type { DragWay, Grip, MeshPicture, MountsPicture, Quality, Scene, SceneOptions, ShowOptions } from "./types.ts";

/** A view turns in this time, ms, straight. */
const TURN_TIME = 120;
/** Kept free round a fitted view, CSS px; less on a small canvas. */
const MARGIN = 44;

/**
 * The car in space, on a canvas: ink on paper as the drawing is, seen without perspective. Draws when something changed
 * and never otherwise. Throws where the browser has no WebGL 2. Words are laid over the canvas as HTML, placed from the
 * nearest element about it that is positioned.
 */
export function createScene(canvas: HTMLCanvasElement, options: SceneOptions): Scene {
  return new CarScene(canvas, options);
}

class CarScene implements Scene {
  private readonly canvas: HTMLCanvasElement;
  private readonly options: SceneOptions;
  private readonly renderer: WebGLRenderer;
  private readonly eye = new Eye();
  private readonly stage: Stage;
  private readonly labels: Labels;
  private readonly marks: GripMarks;
  private readonly axes: HoldAxes;
  private readonly chassis: ChassisMeshPart;
  private readonly mounts: MountZonesPart;
  private readonly survey: SurveyRegionsPart;
  private readonly hand: Hand;
  private readonly sized: ResizeObserver;
  private readonly stopListening: () => void;
  private quality: Quality;
  private isStill: boolean;
  private frame: Frame | null = null;
  private bars: ReturnType<typeof barsOf> = [];
  private mesh: MeshPicture | null = null;
  private asksMesh = false;
  private wanted = 0;
  private turning: Turning | null = null;
  private isFitted = false;

  constructor(canvas: HTMLCanvasElement, options: SceneOptions) {
    this.canvas = canvas;
    this.options = options;
    this.quality = options.quality;
    this.isStill = options.reducedMotion;
    this.renderer = new WebGLRenderer({
      canvas,
      antialias: options.quality === "high",
      powerPreference: "high-performance",
    });
    this.renderer.outputColorSpace = LinearSRGBColorSpace;
    this.renderer.localClippingEnabled = true;
    this.renderer.autoClear = false;
    this.stage = new Stage(options.quality);
    this.labels = new Labels(canvas);
    this.marks = new GripMarks(this.stage.inks);
    this.axes = new HoldAxes(this.stage.inks);
    this.chassis = new ChassisMeshPart(this.stage.inks);
    this.mounts = new MountZonesPart(this.stage.inks);
    this.survey = new SurveyRegionsPart(this.stage.inks);
    const parts = [this.chassis, this.mounts, this.survey, this.axes, this.marks];
    this.stage.once.add(...parts.map(({ object }) => object));
    this.hand = new Hand(this.eye, this.marks, this.axes, options);
    if (canvas.tabIndex < 0) canvas.tabIndex = 0;
    canvas.style.touchAction = "none";
    this.stopListening = listen(canvas, this.targets());
    canvas.addEventListener("webglcontextrestored", this.ask);
    this.sized = new ResizeObserver(() => this.resize());
    this.sized.observe(canvas);
    this.setTheme();
    this.resize();
  }

  show(study: Study, position: Position, options: ShowOptions = {}): void {
    const frame = frameOf(study, position, options);
    this.frame = frame;
    this.bars = barsOf(frame);
    this.stage.show(frame);
    this.hand.show(frame);
    this.mounts.place(position);
    this.labels.set(labelsOf(frame, this.hand.held(), this.mesh));
    if (!this.isFitted) this.fit();
    this.ask();
  }

  view(name: Parameters<Scene["view"]>[0]): void {
    const from = this.eye.state();
    if (name !== "fit") this.eye.look(VIEWS[name]);
    this.fit();
    this.turnFrom(from);
  }

  orbit(right: number, up: number): void {
    const from = this.eye.state();
    this.eye.orbit(right, up);
    this.turnFrom(from);
  }

  pan(right: number, down: number): void {
    this.turning = null;
    this.eye.pan(right, down);
    this.ask();
  }

  zoom(factor: number, x?: number, y?: number): void {
    this.turning = null;
    this.eye.zoom(factor, x, y);
    this.ask();
  }

  pick(x: number, y: number): Grip | null {
    return this.hand.pick(x, y);
  }

  grips(): readonly Grip[] {
    return this.hand.all();
  }

  spotOf(point: Vec3): { readonly x: number; readonly y: number } {
    const spot = { x: 0, y: 0, depth: 0 };
    this.eye.spotOf(point, spot);
    return { x: spot.x, y: spot.y };
  }

  dragAlong(way: DragWay): void {
    this.hand.way = way;
  }

  showMesh(mesh: MeshPicture | null): void {
    this.mesh = mesh;
    this.chassis.show(mesh);
    if (this.frame) this.labels.set(labelsOf(this.frame, this.hand.held(), mesh));
    this.ask();
  }

  showMounts(mounts: MountsPicture | null): void {
    this.mounts.show(mounts, this.frame?.position);
    this.ask();
  }

  showSurvey(regions: readonly RegionPicture[] | null): void {
    this.survey.show(regions);
    this.ask();
  }

  pickOnMesh(isOn: boolean): void {
    this.asksMesh = isOn;
  }

  setTheme(): void {
    const tokens = readTokens(this.canvas);
    this.stage.setColours(tokens);
    this.renderer.setClearColor(tokens.paper, 1);
    this.ask();
  }

  setQuality(quality: Quality): void {
    if (quality === this.quality) return;
    this.quality = quality;
    this.stage.build(quality);
    this.resize();
  }

  setReducedMotion(isReduced: boolean): void {
    this.isStill = isReduced;
  }

  resize(): void {
    const width = Math.max(1, this.canvas.clientWidth);
    const height = Math.max(1, this.canvas.clientHeight);
    const ratio = this.quality === "high" ? Math.min(2, window.devicePixelRatio || 1) : 1;
    this.renderer.setPixelRatio(ratio);
    this.renderer.setSize(width, height, false);
    if (this.isFitted) this.eye.zoom(Math.min(width / this.eye.width, height / this.eye.height));
    this.eye.resize(width, height);
    const { canvas, pen } = this.stage.inks.uniforms;
    canvas.value.set(width * ratio, height * ratio);
    pen.value = ratio;
    this.labels.cover(this.canvas);
    // Taking a size empties the canvas: what was there comes back before the page is shown again.
    this.draw();
  }

  readonly draw = (): void => {
    cancelAnimationFrame(this.wanted);
    this.wanted = 0;
    if (this.turning) this.turnOn(this.turning);
    const { frame, eye } = this;
    this.axes.place(eye);
    this.stage.draw(this.renderer, eye);
    this.labels.place(
      eye,
      frame ? { at: frame.position.wheelCentre, radius: frame.car.wheel.freeRadius } : null,
      boxesOf(this.bars, eye),
    );
    if (this.turning) this.ask();
  };

  dispose(): void {
    cancelAnimationFrame(this.wanted);
    this.stopListening();
    this.sized.disconnect();
    this.canvas.removeEventListener("webglcontextrestored", this.ask);
    const all = [this.stage, this.marks, this.axes, this.chassis, this.mounts, this.survey, this.labels];
    for (const each of all) each.dispose();
    this.renderer.dispose();
    this.renderer.forceContextLoss();
  }

  /** One draw before the next frame, however often it is asked for. */
  private readonly ask = (): void => {
    if (this.wanted === 0) this.wanted = requestAnimationFrame(this.draw);
  };

  private fit(): void {
    if (!this.frame) return;
    this.isFitted = true;
    this.eye.fit(ballsOf(this.frame), Math.min(MARGIN, Math.min(this.eye.width, this.eye.height) * 0.08));
    this.ask();
  }

  private turnFrom(from: EyeState): void {
    this.turning = this.isStill ? null : { from, to: this.eye.state(), since: performance.now() };
    this.ask();
  }

  private turnOn({ from, to, since }: Turning): void {
    const fraction = Math.min(1, (performance.now() - since) / TURN_TIME);
    this.eye.between(from, to, fraction);
    if (fraction === 1) this.turning = null;
  }

  private targets(): GestureTargets {
    const { hand, canvas } = this;
    const { onSelect, onNudge, onMeshRay } = this.options;
    const letGo = (phase: "end" | "cancel"): void => {
      canvas.style.cursor = "";
      hand.letGo(phase);
    };
    return {
      grab: (x, y) => {
        if (this.asksMesh || !hand.grab(x, y)) return false;
        canvas.style.cursor = "grabbing";
        return true;
      },
      drag: (x, y) => hand.drag(x, y),
      release: () => letGo("end"),
      giveUp: () => letGo("cancel"),
      orbit: (right, up) => {
        this.turning = null;
        this.eye.orbit(right, up);
        this.ask();
      },
      pan: (right, down) => this.pan(right, down),
      zoom: (factor, x, y) => this.zoom(factor, x, y),
      tap: (x, y) => {
        if (this.asksMesh && onMeshRay) onMeshRay(...this.eye.rayAt(x, y));
        else onSelect?.(hand.pick(x, y)?.path ?? null);
      },
      hover: (x, y) => {
        canvas.style.cursor = hand.isOverSomething(x, y) ? "grab" : "";
      },
      nudge: (axis, sign) => {
        const held = hand.held();
        if (!held || !onNudge) return false;
        onNudge(held.path, axis, sign);
        return true;
      },
      chooseNext: (step) => onSelect?.(hand.neighbour(step)),
      fit: () => this.view("fit"),
    };
  }
}

interface Turning {
  readonly from: EyeState;
  readonly to: EyeState;
  readonly since: number;
}
