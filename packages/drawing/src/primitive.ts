/**
 * What a drawing is made of. Coordinates are in sheet units (px on screen, mm on paper), x to the right, y DOWN, as both
 * SVG and a PDF page turned over have it. Colours are never named: each primitive says what it is (`ink`), and screen or
 * paper decides how that looks.
 */
export type Primitive = LinePrimitive | AreaPrimitive | TextPrimitive | GroupPrimitive;

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** What the line or area stands for; decides its colour. `stop` is only for what stops the wheel, `hold` only for what is held. */
export type Ink =
  | "ink"
  | "ink-2"
  | "pencil"
  | "stop"
  | "hold"
  | "on-accent"
  | "grid"
  | "grid-0"
  | "paper"
  | "blade"
  | "none";

/** Line weights of the look, heaviest first. */
export type Weight = "rim" | "outline" | "curve" | "visible" | "ghost" | "thin" | "hair";

export type Dash = "solid" | "ghost" | "centre" | "keep-out" | "construction" | "hinge" | "dots" | "short";

/** Hatching means something: cut through, kept out, out of reach, uncertain. */
export type Hatch = "cut" | "keep-out" | "out-of-reach" | "uncertain";

interface Common {
  /** Layer by purpose, e.g. `wheel`, `linkage`, `shaft`, `shock`, `keep-out`, `dimension`, `ghost`, `ground`. */
  readonly layer: string;
  /** What it is part of, for picking and for names: a pivot's or member's id, a keep-out's name. */
  readonly meaning?: string;
}

/** An open or closed path: straight lines, and curves already broken into cubic Béziers where there are any. */
export interface LinePrimitive extends Common {
  readonly shape: "line";
  readonly path: readonly PathStep[];
  readonly ink: Ink;
  readonly weight: Weight;
  readonly dash: Dash;
}

/** A closed path that is filled, hatched, or both, and may have an outline. */
export interface AreaPrimitive extends Common {
  readonly shape: "area";
  readonly path: readonly PathStep[];
  readonly fill: Ink;
  readonly hatch?: Hatch;
  readonly ink: Ink;
  readonly weight: Weight;
  readonly dash: Dash;
  // Holes count by the even-odd rule.
}

export interface TextPrimitive extends Common {
  readonly shape: "text";
  readonly at: Spot;
  /** Plain text; a fraction is written `12 3/16` and set as a fraction by whoever renders it. */
  readonly text: string;
  /** `title` and `result` are for paper and heads. */
  readonly size: "label" | "text" | "reading" | "title" | "result";
  readonly bold: boolean;
  readonly anchor: "start" | "middle" | "end";
  /** Radians, clockwise on the sheet. */
  readonly turn: number;
  readonly ink: Ink;
  /** An edge in the colour of what lies under it, so that it reads over hatching. */
  readonly halo: "none" | "paper" | "blade";
}

export interface GroupPrimitive extends Common {
  readonly shape: "group";
  readonly parts: readonly Primitive[];
  /** Said to a screen reader in place of the parts. */
  readonly label?: string;
  /** Nothing of the parts shows outside it. */
  readonly clip?: Box;
}

/** An upright rectangle on the sheet. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export type PathStep =
  | { readonly to: "move" | "line"; readonly at: Spot }
  | { readonly to: "curve"; readonly c1: Spot; readonly c2: Spot; readonly at: Spot }
  | { readonly to: "close" };

/** How a view lies on the sheet. */
export interface Sheet {
  readonly width: number;
  readonly height: number;
  /** Sheet units a metre. */
  readonly scale: number;
  /** Where the view's own origin lies: for the rear view y = 0 (centreline), z = 0 (ground). */
  readonly origin: Spot;
  /** Sheet units a px of the look's line weights and type: 1 on screen, 0.2646 on paper in mm. */
  readonly pen: number;
}

export interface Drawing {
  readonly sheet: Sheet;
  readonly parts: readonly Primitive[];
  /** Places that can be grabbed: movable points, the wheel centre. */
  readonly handles: readonly Handle[];
}

export interface Handle {
  /**
   * Place in the document, e.g. `linkage.upperLink.inner` or `linkage.links[0].inner`; `travel` for the wheel itself and
   * the tape's marker, `stops.bump` and `stops.droop` for the tape's blocks.
   */
  readonly path: string;
  readonly label: string;
  readonly at: Spot;
}
