import { z } from "zod";
import { describeField } from "./field-words.ts";
import { fieldFacts } from "./fields.ts";
import { carSchema } from "./schema.ts";

/** The JSON Schema (draft 2020-12) of a car document, for editors to complete and explain fields. */
export function carJsonSchema(): z.core.JSONSchema.BaseSchema {
  const schema = z.toJSONSchema(carSchema("inch-pound"), {
    target: "draft-2020-12",
    override: ({ zodSchema, jsonSchema }) => {
      const facts = fieldFacts.get(zodSchema);
      if (facts) jsonSchema.description = describeField(facts);
      if (jsonSchema.properties?.["surveyed"]) letBeSurveyed(jsonSchema);
    },
  });
  return { ...schema, title: "Armwright car document" };
}

/**
 * A point has its coordinates, or the name of the survey's point that they come from. That one of the two is there is left
 * to the reader: the schema stays plain enough for editors and for the page's forms.
 */
function letBeSurveyed(schema: z.core.JSONSchema.BaseSchema): void {
  const required = (schema.required ?? []).filter((name) => !["x", "y", "z"].includes(name));
  if (required.length > 0) schema.required = required;
  else delete schema.required;
}
