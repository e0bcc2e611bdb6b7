import type { Dimension, Vec3 } from "@armwright/engine";
import { numberOut, type OutUnits } from "../units-out.ts";

// The form of a file is declared once: each field knows its meaning, its JSON Schema, and how to write itself out of what
// it is made from. The published schema and the written file can therefore not drift apart.

export type Json = string | number | boolean | null | readonly Json[] | JsonObject;
export interface JsonObject {
  readonly [name: string]: Json;
}

/** One field of the form, written out of a `From`. */
export interface Field<From> {
  readonly schema: () => JsonObject;
  /** Undefined leaves the field out. */
  readonly write: (from: From, units: OutUnits) => Json | undefined;
  readonly isOptional?: true;
}

type Fields<From> = Readonly<Record<string, Field<From>>>;

/** The makers of fields that are written out of a `From`. `read` gives SI. */
export const fieldsOf = <From>() => ({
  text: (meaning: string, read: (from: From) => string): Field<From> => ({
    schema: () => ({ type: "string", description: meaning }),
    write: (from) => read(from),
  }),

  /** One of a few words. */
  word: <Word extends string>(
    meaning: string,
    words: readonly Word[],
    read: (from: From, units: OutUnits) => Word,
  ): Field<From> => ({
    schema: () => ({ type: "string", enum: words, description: meaning }),
    write: (from, units) => read(from, units),
  }),

  flag: (meaning: string, read: (from: From) => boolean): Field<From> => ({
    schema: () => ({ type: "boolean", description: meaning }),
    write: (from) => read(from),
  }),

  /** The version of the form itself. */
  version: (meaning: string, value: number): Field<From> => ({
    schema: () => ({ const: value, description: meaning }),
    write: () => value,
  }),

  quantity: (meaning: string, dimension: Dimension, read: (from: From) => number): Field<From> => ({
    schema: () => ({ type: "number", description: withUnit(meaning, dimension) }),
    write: (from, units) => finite(read(from), meaning, dimension, units),
  }),

  /** A number that may not exist: null then. */
  maybe: (meaning: string, dimension: Dimension, read: (from: From) => number | null | undefined): Field<From> => ({
    schema: () => ({
      type: ["number", "null"],
      description: `${withUnit(meaning, dimension)} Null where there is none.`,
    }),
    write: (from, units) => orNull(read(from), dimension, units),
  }),

  /** A number (or a word) whose dimension is told by a field beside it. */
  quantityOf: (
    meaning: string,
    dimension: (from: From) => Dimension,
    read: (from: From) => number | string,
  ): Field<From> => ({
    schema: () => ({ type: ["number", "string"], description: `${meaning} ${BESIDE}` }),
    write: (from, units) => {
      const value = read(from);
      return typeof value === "string" ? value : finite(value, meaning, dimension(from), units);
    },
  }),

  /** A column of numbers whose dimension is told by a field beside it. */
  column: (
    meaning: string,
    dimension: (from: From) => Dimension,
    read: (from: From) => readonly (number | null)[],
  ): Field<From> => ({
    schema: () => ({
      type: "array",
      items: { type: ["number", "null"] },
      description: `${meaning} ${BESIDE} Null where there is none.`,
    }),
    write: (from, units) => read(from).map((value) => orNull(value, dimension(from), units)),
  }),

  point: (meaning: string, read: (from: From) => Vec3): Field<From> => ({
    schema: () => ({
      type: "object",
      properties: { x: { type: "number" }, y: { type: "number" }, z: { type: "number" } },
      required: ["x", "y", "z"],
      additionalProperties: false,
      description: `${meaning} Vehicle axes: x forward, y left, z up. Unit: length.`,
    }),
    write: (from, units) => {
      const { x, y, z } = read(from);
      const out = (value: number) => finite(value, meaning, "length", units);
      return { x: out(x), y: out(y), z: out(z) };
    },
  }),

  record: (meaning: string, fields: Fields<From>): Field<From> => ({
    schema: () => ({
      type: "object",
      description: meaning,
      properties: Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, field.schema()])),
      required: Object.entries(fields).flatMap(([name, field]) => (field.isOptional ? [] : [name])),
      additionalProperties: false,
    }),
    write: (from, units) => {
      const entries = Object.entries(fields).map(([name, field]) => [name, field.write(from, units)] as const);
      return Object.fromEntries(entries.filter((entry): entry is [string, Json] => entry[1] !== undefined));
    },
  }),

  list: <Item>(meaning: string, item: Field<Item>, read: (from: From) => readonly Item[]): Field<From> => ({
    schema: () => ({ type: "array", items: item.schema(), description: meaning }),
    write: (from, units) => read(from).map((each) => item.write(each, units) ?? null),
  }),

  /** A field that is written out of a part. */
  part: <Part>(field: Field<Part>, read: (from: From) => Part): Field<From> => ({
    schema: field.schema,
    write: (from, units) => field.write(read(from), units),
  }),

  /** The same, left out where there is no such part. */
  optional: <Part>(field: Field<Part>, read: (from: From) => Part | null | undefined): Field<From> => ({
    isOptional: true,
    schema: field.schema,
    write: (from, units) => {
      const part = read(from);
      return part === null || part === undefined ? undefined : field.write(part, units);
    },
  }),

  /** The same, null where there is no such part. */
  orNothing: <Part>(meaning: string, field: Field<Part>, read: (from: From) => Part | null): Field<From> => ({
    schema: () => ({ anyOf: [field.schema(), { type: "null" }], description: meaning }),
    write: (from, units) => {
      const part = read(from);
      return part === null ? null : (field.write(part, units) ?? null);
    },
  }),
});

const BESIDE = "Unit: by the dimension beside it.";

const withUnit = (meaning: string, dimension: Dimension): string =>
  dimension === "ratio" || dimension === "count" ? meaning : `${meaning} Unit: ${dimension}.`;

function finite(value: number, meaning: string, dimension: Dimension, units: OutUnits): number {
  if (!Number.isFinite(value)) throw new Error(`no number where there has to be one: ${meaning}`);
  return numberOut(value, dimension, units);
}

const orNull = (value: number | null | undefined, dimension: Dimension, units: OutUnits): number | null =>
  value === null || value === undefined || !Number.isFinite(value) ? null : numberOut(value, dimension, units);
