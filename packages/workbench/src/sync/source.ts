import type { CarDocument, CarReading, FieldValue } from "@armwright/engine/document";

/** One edit: a field's place and its new value; undefined takes the field out. */
export interface Edit {
  readonly path: string;
  readonly value: FieldValue;
}

/** broken: the file can only be mended or replaced as a whole. gone: the file was taken away. */
export type Condition = "sound" | "faulty" | "broken" | "gone";

export interface SaidFault {
  readonly path: string;
  readonly says: string;
  readonly line?: number;
}

/** A car as this page sees it: what is kept, with the edits that still wait laid over it. */
export interface CarState {
  readonly name: string;
  readonly condition: Condition;
  /** What edits are made to; undefined where broken. Faulty documents are not yet a car in every field. */
  readonly document: CarDocument | undefined;
  readonly reading: CarReading;
  /** Said in words; empty where sound. */
  readonly faults: readonly SaidFault[];
  /** Edits of this car that are kept in this browser and not yet acknowledged. */
  readonly waiting: number;
}

export interface CarEntry {
  /** Its file's name without the ending: what the other calls take. */
  readonly name: string;
  /** What the document calls the car. */
  readonly title: string;
  readonly condition: Condition;
}

export interface Listing {
  readonly cars: readonly CarEntry[];
  readonly passedOver: readonly { readonly file: string; readonly because: string }[];
  /** Cars that can be brought back out of their history. */
  readonly removed: readonly string[];
}

export interface Version {
  readonly id: string;
  /** When it was put away, ISO 8601. */
  readonly at: string;
  /** What made it an earlier version. */
  readonly because: "edit" | "program" | "restore" | "remove";
  readonly bytes: number;
}

export interface Status {
  /**
   * kept: all is where it belongs. waiting to send: kept in this browser until the server is back.
   * must pair: the server does not know this device. not kept: the browser's storage is full or closed to us.
   */
  readonly word: "kept" | "sending" | "waiting to send" | "must pair" | "not kept";
  /** Edits that wait. */
  readonly waiting: number;
  /** Why, in a plain sentence, where there is more to say. */
  readonly because?: string;
}

export type SourceEvent =
  | { readonly kind: "car"; readonly state: CarState; readonly by: "here" | "elsewhere" | "program" }
  /** Cars were added or taken away. */
  | { readonly kind: "list" }
  | { readonly kind: "status"; readonly status: Status }
  /** Another hand that had not seen this page's value replaced it; absent values were taken out. */
  | {
      readonly kind: "overruled";
      readonly name: string;
      readonly path: string;
      readonly yours?: FieldValue;
      readonly theirs?: FieldValue;
      readonly by: "person" | "program";
    }
  /** This page's edit went over a value that it had not seen; its author is told. */
  | { readonly kind: "replaced"; readonly name: string; readonly path: string; readonly theirs?: FieldValue }
  /** An edit that can never be made, e.g. of a list item that is gone. It is handed back here, not dropped in silence. */
  | { readonly kind: "refused"; readonly name: string; readonly edit: Edit; readonly because: string };

export type Made = { readonly ok: true; readonly name: string } | { readonly ok: false; readonly because: string };

/** Where cars are kept: a served folder, or this browser's storage. */
export interface DocumentSource {
  readonly kind: "server" | "browser";
  status(): Status;
  list(): Promise<Listing>;
  /** Reads a car and follows it from then on; undefined where there is none of that name. */
  open(name: string): Promise<CarState | undefined>;
  /** Makes the edits in this page at once, keeps them, and sends them. The car has to have been opened. */
  apply(name: string, edits: readonly Edit[]): CarState;
  subscribe(listener: (event: SourceEvent) => void): () => void;
  /** Newest first. */
  history(name: string): Promise<readonly Version[]>;
  version(name: string, id: string): Promise<string | undefined>;
  /** False where it could not be done. */
  restore(name: string, id: string): Promise<boolean>;
  /** A new car; where the name is taken, a like one is found. */
  create(name: string, document: CarDocument): Promise<Made>;
  /** The same from a file's text, faults and all; text that is no car document is refused, with the reason. */
  importText(name: string, text: string): Promise<Made>;
  /** The text of the car as this page sees it. */
  exportText(name: string): string | undefined;
  /** The text stays in the history. */
  remove(name: string): Promise<boolean>;
  /** Scans and drawings that lie beside the cars: .stl, .obj, .glb. */
  readMesh(file: string): Promise<Uint8Array<ArrayBuffer> | undefined>;
  keepMesh(file: string, bytes: Uint8Array<ArrayBuffer>): Promise<Made>;
  close(): void;
}
