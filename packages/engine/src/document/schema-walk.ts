import type { z } from "zod";

// zod's types cannot tell which kind of schema a field holds; `def.type` can. Everything else here rests on these.

interface AnyDef {
  readonly type: string;
  readonly innerType?: z.core.$ZodType;
  readonly shape?: Readonly<Record<string, z.core.$ZodType>>;
  readonly options?: readonly z.core.$ZodType[];
  readonly discriminator?: string;
  readonly element?: z.core.$ZodType;
  readonly valueType?: z.core.$ZodType;
  readonly values?: readonly unknown[];
  readonly entries?: Readonly<Record<string, unknown>>;
}

const defOf = (schema: z.core.$ZodType): AnyDef => schema._zod.def as unknown as AnyDef;

/** The schema inside an optional one. */
export function required(schema: z.core.$ZodType): { readonly schema: z.core.$ZodType; readonly optional: boolean } {
  const { type, innerType } = defOf(schema);
  return type === "optional" && innerType ? { schema: innerType, optional: true } : { schema, optional: false };
}

/** Fields of a section in declared order; undefined where the schema is no section. */
export const fieldsOf = (schema: z.core.$ZodType): ReadonlyMap<string, z.core.$ZodType> | undefined => {
  const { shape } = defOf(schema);
  return shape ? new Map(Object.entries(shape)) : undefined;
};

/** The forms of a section that comes in several, and the field that tells which. */
export function formsOf(
  schema: z.core.$ZodType,
): { readonly by: string; readonly forms: readonly z.core.$ZodType[] } | undefined {
  const { discriminator, options } = defOf(schema);
  return discriminator !== undefined && options ? { by: discriminator, forms: options } : undefined;
}

/** What a list, or a section whose names are free, holds. */
export const itemOf = (schema: z.core.$ZodType): z.core.$ZodType | undefined =>
  defOf(schema).element ?? (defOf(schema).type === "record" ? defOf(schema).valueType : undefined);

export const isList = (schema: z.core.$ZodType): boolean => defOf(schema).type === "array";

/** The one value of a field that cannot have another. */
export const onlyValue = (schema: z.core.$ZodType): unknown =>
  defOf(schema).type === "literal" ? defOf(schema).values?.[0] : undefined;

/** The form of a section that a value belongs to. */
export function formFor(
  schema: z.core.$ZodType,
  value: Readonly<Record<string, unknown>>,
): z.core.$ZodType | undefined {
  const several = formsOf(schema);
  if (!several) return schema;
  return several.forms.find((form) => {
    const tell = fieldsOf(form)?.get(several.by);
    return tell !== undefined && onlyValue(tell) === value[several.by];
  });
}

/** The words of a field that is one of several. */
export function wordsOf(schema: z.core.$ZodType): readonly string[] | undefined {
  const { type, entries } = defOf(schema);
  return type === "enum" && entries ? Object.values(entries).map(String) : undefined;
}
