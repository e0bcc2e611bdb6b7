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
    },
  });
  return { ...schema, title: "Armwright car document" };
}
