import { readFileSync } from "node:fs";
import type { Plugin } from "vite";
import { carJsonSchema } from "../../engine/src/document/json-schema.ts";

const NAME = "virtual:car-schema";

/**
 * The published JSON Schema of a car document, written once when the page is built: forms are made from it. The part of
 * zod that writes schemas then has nothing to do in the browser and is left out of the page.
 */
export function carSchema(): Plugin {
  return {
    name: "armwright-car-schema",
    enforce: "pre",
    resolveId: (id) => (id === NAME ? `\0${NAME}` : undefined),
    load(id) {
      if (id === `\0${NAME}`) return `export default ${JSON.stringify(leftSide())};`;
      return /[\\/]zod[\\/]v4[\\/]core[\\/](json-schema-processors|to-json-schema)\.js$/.test(id)
        ? emptied(id)
        : undefined;
    },
    transform(code, id) {
      return DECLARATIONS.test(id) ? { code: code.replace(MEANING, '$1""'), map: null } : undefined;
    },
  };
}

/** Where fields are declared. */
const DECLARATIONS = /[\\/]engine[\\/]src[\\/]document[\\/](?:(?:sections|linkages)[\\/][\w-]+|schema)\.ts$/;

/**
 * What a field means, as it is handed to the maker of the field: the page has it from the published schema, and reading a
 * document does not ask for it.
 */
const MEANING =
  /(\bf\s*\.(?:length|angle|text|section|list|point|mount|chassisMount|direction|thread)\(\s*|\bf\.oneOf\([\w.]+,\s*|\bf\.quantity\("\w+",\s*)"(?:[^"\\]|\\.)*"/g;

/** The right side repeats the left one's sections, and the page asks for the left one only. */
function leftSide() {
  const schema = carJsonSchema();
  const { right: _, ...properties } = schema.properties ?? {};
  return { ...schema, properties };
}

/** The same exports, all of them nothing. A name that zod adds or drops is seen by the bundler. */
function emptied(file: string): string {
  const names = [...readFileSync(file, "utf8").matchAll(/^export (?:const|function|class) (\w+)/gm)].map(
    (match) => match[1],
  );
  return names.map((name) => `export const ${name} = () => undefined;`).join("\n");
}
