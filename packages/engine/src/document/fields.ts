import { z } from "zod";
import type { BodyId, Dimension, UnitSystem } from "../car/car.ts";
import { parseQuantity } from "../units/quantity.ts";
import { parseThread } from "../units/thread.ts";
import { type Assumed, inchRange, type Typical } from "./assumed.ts";
import type { FaultCode } from "./fault.ts";
import { DIMENSION_LIMITS, type Limit } from "./limits.ts";

/** What the reference and the JSON Schema tell of a field; registered beside its zod schema. */
export interface FieldFacts {
  readonly meaning: string;
  /** Given for a value with a unit. */
  readonly dimension?: Dimension;
  readonly typical?: Typical;
  readonly assumed?: { readonly words: string; readonly because: string };
  /** Set for fields whose form is easier said than listed. */
  readonly form?: "direction" | "thread";
}

export const fieldFacts = z.registry<FieldFacts>();

/** A field that can have one value only: it tells a form of a section from the others. */
export function tellField<const Word extends string>(word: Word, meaning: string): z.ZodLiteral<Word> {
  const schema = z.literal(word);
  const any: z.ZodType = schema;
  any.register(fieldFacts, { meaning });
  return schema;
}

export interface QuantityRules {
  readonly sign?: "any" | "positive" | "not-negative";
  readonly typical?: Typical;
  /** Tighter than the limit of its dimension; SI, and as a builder says it. */
  readonly limit?: Limit;
  // The reference needs only its words, whatever the value rests on.
  readonly assumed?: Pick<Assumed, "words" | "because">;
}

export const BODIES = [
  "chassis",
  "spindle",
  "lower-arm",
  "upper-arm",
  "trailing-arm",
] as const satisfies readonly BodyId[];
export const DIRECTION_WORDS = ["forward", "rearward", "left", "right", "up", "down"] as const;
export type DirectionWord = (typeof DIRECTION_WORDS)[number];

// A zod message carries only the kind of thing expected; sentences are made in fault-words.ts.
const expecting = (kind: string) => ({ error: () => kind });

/** The makers of fields for a document in one unit system: the one place where schema, meaning and unit meet. */
export function fieldsFor(system: UnitSystem) {
  const quantity = (dimension: Dimension, meaning: string, rules: QuantityRules = {}) =>
    z
      .union([z.number(), z.string()], expecting(kindOf(dimension)))
      .superRefine((value, context) => {
        const fault = quantityFault(value, dimension, system, rules);
        if (fault) context.addIssue({ code: "custom", message: fault.code, params: fault });
      })
      .register(fieldFacts, facts({ meaning, dimension }, rules));

  const length = (meaning: string, rules?: QuantityRules) => quantity("length", meaning, rules);
  const angle = (meaning: string, rules?: QuantityRules) => quantity("angle", meaning, rules);

  const text = (meaning: string) =>
    z
      .string(expecting("text"))
      .superRefine((value, context) => {
        if (value.trim() === "")
          context.addIssue({ code: "custom", message: "empty-text", params: { code: "empty-text" } });
      })
      .register(fieldFacts, { meaning });

  const oneOf = <const Word extends string>(
    words: readonly Word[],
    meaning: string,
    rules: Pick<QuantityRules, "assumed"> = {},
  ) => z.enum(words, expecting(words.join("|"))).register(fieldFacts, facts({ meaning }, rules));

  const section = <Shape extends z.ZodRawShape>(meaning: string, shape: Shape) =>
    z
      .strictObject(shape, {
        error: (issue) => (issue.code === "unrecognized_keys" ? Object.keys(shape).join("|") : "an object in braces"),
      })
      .register(fieldFacts, { meaning });

  const list = <Item extends z.ZodType>(meaning: string, item: Item) =>
    z.array(item, expecting("a list in square brackets")).register(fieldFacts, { meaning });

  const coordinates = () => ({
    surveyed: text("Name of the survey's point that it is; x, y and z then follow from the readings.").exactOptional(),
    x: length("Forward of the datum; behind it is negative."),
    y: length("Out from the car's centreline: left positive, right negative."),
    z: length("Up from the ground at ride height."),
    plusMinus: length(
      "How far this point may be off, either way in each direction, where it differs from tolerances.",
      {
        sign: "positive",
        typical: inchRange(1 / 32, 0.5),
      },
    ).exactOptional(),
  });

  const point = (meaning: string, rules: Pick<QuantityRules, "assumed"> = {}) =>
    section(meaning, coordinates()).register(fieldFacts, facts({ meaning }, rules));

  /** A bolt-on point. The body may be left out only where one is assumed. */
  const mount = (meaning: string) =>
    section(meaning, { ...coordinates(), on: oneOf(BODIES, "The part that it is bolted to.") });
  const chassisMount = (meaning: string) =>
    section(meaning, {
      ...coordinates(),
      on: oneOf(BODIES, "The part that it is bolted to.", {
        assumed: { words: "chassis", because: "the end that is bolted to the chassis" },
      }).exactOptional(),
    });

  const direction = (meaning: string, rules: Pick<QuantityRules, "assumed"> = {}) =>
    z
      .union(
        [z.enum(DIRECTION_WORDS), z.strictObject({ x: z.number(), y: z.number(), z: z.number() })],
        expecting("a direction"),
      )
      .superRefine((value, context) => {
        if (typeof value !== "object") return;
        const size = Math.hypot(value.x, value.y, value.z);
        if (size < 1e-9 || size > 1e9) {
          context.addIssue({ code: "custom", message: "zero-direction", params: { code: "zero-direction" } });
        }
      })
      .register(fieldFacts, facts({ meaning, form: "direction" }, rules));

  const thread = (meaning: string) =>
    z
      .string(expecting("a thread"))
      .superRefine((value, context) => {
        if (!parseThread(value))
          context.addIssue({ code: "custom", message: "bad-thread", params: { code: "bad-thread" } });
      })
      .register(fieldFacts, { meaning, form: "thread" });

  return { quantity, length, angle, text, oneOf, section, list, point, mount, chassisMount, direction, thread };
}

export type Fields = ReturnType<typeof fieldsFor>;

interface QuantityFault {
  readonly code: FaultCode;
  readonly expected?: string;
  readonly suggestion?: string;
  readonly [name: string]: unknown;
}

function quantityFault(
  value: number | string,
  dimension: Dimension,
  system: UnitSystem,
  rules: QuantityRules,
): QuantityFault | undefined {
  const expected = kindOf(dimension);
  const parsed = parseQuantity(value, dimension, system);
  if (!parsed.ok) {
    return parsed.suggestion === undefined
      ? { code: "bad-quantity", expected }
      : { code: "bad-quantity", expected, suggestion: parsed.suggestion };
  }
  const limit = rules.limit ?? DIMENSION_LIMITS[dimension];
  if (limit !== undefined && Math.abs(parsed.value) > limit.most) return { code: "too-large", expected: limit.words };
  if (rules.sign === "positive" && parsed.value <= 0) return { code: "not-positive" };
  if (rules.sign === "not-negative" && parsed.value < 0) return { code: "negative" };
  return undefined;
}

const KINDS: Partial<Record<Dimension, string>> = {
  length: "a length",
  angle: "an angle",
  mass: "a weight",
  percent: "a percentage",
  rate: "a rate",
  pressure: "a pressure",
  stress: "a stress",
  torque: "a torque",
  force: "a force",
  volume: "a volume",
};

const kindOf = (dimension: Dimension): string => KINDS[dimension] ?? "a number";

function facts(base: FieldFacts, rules: QuantityRules): FieldFacts {
  return {
    ...base,
    ...(rules.typical ? { typical: rules.typical } : {}),
    ...(rules.assumed ? { assumed: { words: rules.assumed.words, because: rules.assumed.because } } : {}),
  };
}
