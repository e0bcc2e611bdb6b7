import type { Study, UnitSystem, Vec3 } from "@armwright/engine";
import type { CarDocument, Fault, Operation } from "@armwright/engine/document";
import type { Card } from "../as-built/card.ts";
import type { StepId } from "../steps/steps.ts";
import type { Live } from "./live-study.ts";
import type { Side } from "./sides.ts";
import type { Undoing } from "./undo.ts";

/** What is in the hand: a point, a stop's block, or a field of the sheet, each by its place in the document. */
export interface Held {
  readonly place: string;
  readonly as: "point" | "stop" | "field";
}

export type ViewName = "rear" | "top" | "left";
export type ThemeChoice = "auto" | "light" | "dark";

type SurveyEntry = NonNullable<CarDocument["survey"]>["readings"][number];

/** What lies over the bench. */
export type Panel =
  | { readonly kind: "files" }
  | { readonly kind: "new-car" }
  | { readonly kind: "history" }
  | { readonly kind: "compare" }
  | { readonly kind: "keys" }
  | { readonly kind: "charts" }
  | { readonly kind: "steps" }
  | { readonly kind: "cycle-and-read" }
  | { readonly kind: "keypad"; readonly place: string }
  /** A reading of the survey, by its place in the list, or one that is proposed and not in it yet. */
  | { readonly kind: "survey-reading"; readonly index: number | null; readonly start?: SurveyEntry }
  /** A reading of the cycle log: of a height, of one thing to read, or one that stands in the log. */
  | {
      readonly kind: "log-reading";
      readonly travel?: number;
      readonly card?: Pick<Card, "kind" | "of">;
      readonly path?: string;
    }
  | { readonly kind: "how"; readonly quantity: string }
  | { readonly kind: "how-limit"; readonly direction: "bump" | "droop"; readonly id: string }
  | { readonly kind: "how-finding"; readonly key: string };

/** Another study laid over this one. */
export interface Comparing {
  readonly label: string;
  readonly study: Study;
}

/** A movement of the hand that is still going on: its edits show at once and are sent when it ends. */
export interface Moving {
  readonly words: string;
  readonly from: CarDocument;
  readonly operations: readonly Operation[];
}

export interface BenchState {
  /** Null until a car is open, or where the file cannot be read at all. */
  readonly document: CarDocument | null;
  /** Faults of a file that cannot be read as a document at all. */
  readonly unreadable: readonly Fault[];
  readonly live: Live;
  /** Wheel travel shown, m. */
  readonly travel: number;
  readonly held: Held | null;
  readonly step: StepId;
  readonly units: UnitSystem;
  readonly theme: ThemeChoice;
  readonly view: ViewName;
  /** Which corner is shown and edited. */
  readonly side: Side;
  /** The car in space stands in the place of the drawing. */
  readonly isScene: boolean;
  readonly undoing: Undoing;
  readonly moving: Moving | null;
  readonly comparing: Comparing | null;
  readonly panel: Panel | null;
  /** Shows a newer build of the page, where one is ready. */
  readonly takeNewer: (() => void) | null;
  /** The last thing done, in words; read aloud. */
  readonly said: string;
  readonly isCycling: boolean;
  /** The spot on the car that a chosen finding is about, m; marked in the drawing. */
  readonly spot: Vec3 | null;
  /** The sheet at full height in the charts' place; null leaves it to the step. */
  readonly isSheetRoomy: boolean | null;
  /** Ids of the charts that were picked instead of the step's own. */
  readonly pickedCharts: readonly string[] | null;
}
