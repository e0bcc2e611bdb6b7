import type { z } from "zod";
import { fieldFacts } from "./fields.ts";
import { type Path, parsePath } from "./path.ts";
import { carSchema } from "./schema.ts";
import { fieldsOf, formsOf, itemOf, required } from "./schema-walk.ts";

/** What the form says that a field is, e.g. of `wheel.toe`; undefined where there is no such field, whatever form its section has. */
export function meaningOf(path: string): string | undefined {
  const steps = parsePath(path);
  if (!steps) return undefined;
  const field = fieldAt(carSchema("inch-pound"), steps);
  return field && fieldFacts.get(field)?.meaning;
}

function fieldAt(schema: z.core.$ZodType, [step, ...rest]: Path): z.core.$ZodType | undefined {
  const { schema: inner } = required(schema);
  if (step === undefined) return inner;
  const item = itemOf(inner);
  if (item) return fieldAt(item, rest);
  for (const form of formsOf(inner)?.forms ?? [inner]) {
    const field = fieldsOf(form)?.get(String(step));
    const found = field && fieldAt(field, rest);
    if (found) return found;
  }
  return undefined;
}
