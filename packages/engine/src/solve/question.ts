import type { Car, Dimension, LinkageKindName } from "../car/car.ts";
import type { Operation } from "../document/operation.ts";
import type { Finding } from "../findings/finding.ts";
import type { Study } from "../study/study.ts";
import type { SolveNote } from "./note.ts";

/** The car that a question is put to. */
export interface SolveSubject {
  readonly car: Car;
  /** Sections of the document in which the right side is its own, e.g. `shock`. */
  readonly ownRight: readonly string[];
  /** The car as the document reads with these operations applied; null where it would be refused. */
  carWith(operations: readonly Operation[]): Car | null;
}

/** Subject and its study, made once for all questions. */
export interface SolveContext {
  readonly subject: SolveSubject;
  readonly study: Study;
  /** Told how far an answer has come, 0…1; what takes long asks for it. */
  readonly tell?: (share: number) => void;
}

/** "Find the number that makes this true": a declaration from which a sheet or a command can be made. */
export interface SolveQuestion {
  readonly id: string;
  /** In plain words. */
  readonly title: string;
  /** What is looked for, what is moved, what stays. */
  readonly meaning: string;
  readonly kinds: readonly LinkageKindName[];
  /** What this car lacks for it; null where it can be asked. */
  needs(context: SolveContext): SolveNeed | null;
  inputs(context: SolveContext): readonly SolveInput[];
  solve(context: SolveContext, values: SolveValues): SolveAnswer;
}

export type SolveNeed = "other-linkage" | "driveshaft" | "underbody" | "keep-outs" | "stop-that-moves";

export type SolveInput = NumberInput | ChoiceInput;

export interface NumberInput {
  readonly id: string;
  readonly label: string;
  readonly dimension: Dimension;
  /** SI, like all that follows. */
  readonly default: number;
  readonly least: number;
  readonly most: number;
  /** Its sign means a direction, and is shown. */
  readonly signed: boolean;
}

export interface ChoiceInput {
  readonly id: string;
  readonly label: string;
  readonly dimension: "word";
  readonly default: string;
  readonly choices: readonly { readonly id: string; readonly label: string }[];
}

/** By input id: SI numbers and choice ids; complete. */
export type SolveValues = Readonly<Record<string, number | string>>;

export interface SolveAnswer {
  readonly question: string;
  /**
   * `reached`: what was wanted, after rounding; `already`: it is so now, and the operations, if any, make it better still;
   * `nearest`: not reached, this is the best there is; `none`: nothing better than now was found, and that is not enough.
   */
  readonly outcome: "reached" | "nearest" | "already" | "none";
  readonly aim: SolveAim;
  /** Further numbers of the question, before and after. */
  readonly readings: readonly SolveReading[];
  readonly changes: readonly SolveChange[];
  /** Applied together they are one step. Empty where there is nothing to change. */
  readonly operations: readonly Operation[];
  /** Other results before and after, from the studies of both cars. */
  readonly effects: readonly SolveReading[];
  readonly findings: { readonly appeared: readonly Finding[]; readonly gone: readonly Finding[] };
  readonly curves: readonly SolveCurve[];
  /** Other ways to go about it, or what else stands in the way, best or nearest first. */
  readonly choices: readonly SolveChoice[];
  readonly notes: readonly SolveNote[];
}

/** The number that the question is about. SI. */
export interface SolveAim {
  readonly label: string;
  readonly dimension: Dimension;
  readonly sense: "at-most" | "at-least" | "least";
  /** Null where the question is only for the least there is. */
  readonly wanted: number | null;
  readonly before: number | null;
  /** Before rounding. */
  readonly best: number | null;
  /** With the values that are typed. */
  readonly after: number | null;
}

export interface SolveReading {
  readonly label: string;
  readonly dimension: Dimension;
  readonly signed: boolean;
  readonly before: number | null;
  readonly after: number | null;
  /** Travel at which it is read, m. */
  readonly at?: number;
  /** What the number belongs to, where that may change, e.g. which limit comes first. */
  readonly nameBefore?: string;
  readonly nameAfter?: string;
}

export interface SolveChange {
  readonly path: string;
  readonly label: string;
  readonly dimension: Dimension;
  readonly before: number | null;
  readonly exact: number;
  /** As typed. */
  readonly after: number;
}

export interface SolveCurve {
  readonly label: string;
  /** Offset from where it is now, m. */
  readonly offsets: readonly number[];
  /** In the aim's dimension; null where the linkage does not go together. */
  readonly values: readonly (number | null)[];
}

export interface SolveChoice {
  readonly label: string;
  /** How far it is moved, or at which shift it is met, m. */
  readonly offset: number;
  /** In the aim's dimension; null where only the offset counts. */
  readonly value: number | null;
}
