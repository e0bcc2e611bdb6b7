import type { Dimension } from "@armwright/engine";
import { type CarDocument, formatPath, type Path, parsePath, valueAt } from "@armwright/engine/document";

/** How a field is asked for. */
export type FieldKind = "quantity" | "words" | "text" | "direction" | "point" | "list" | "map" | "section";

/** What the published schema tells of a field, so that its form needs no second list of fields. */
export interface Field {
  readonly path: string;
  readonly kind: FieldKind;
  readonly label: string;
  /** The heading that it stands under. */
  readonly group: string;
  readonly meaning: string;
  readonly dimension?: Dimension;
  /** `12 to 19 in (305 to 483 mm)`. */
  readonly typical?: string;
  /** What is put in when it is left out, and why. */
  readonly leftOut?: string;
  readonly words?: readonly string[];
  readonly isRequired: boolean;
}

interface Schema {
  readonly type?: string | readonly string[];
  readonly const?: unknown;
  readonly enum?: readonly string[];
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly items?: Schema;
  readonly additionalProperties?: Schema | boolean;
  readonly oneOf?: readonly Schema[];
  readonly anyOf?: readonly Schema[];
}

let root: Schema = {};

/** Says what the schema is: the page is built with it, a test makes it. */
export function formsFrom(schema: unknown): void {
  root = schema as Schema;
}

/** Fields at and below a place that this car can have; `links[*]` stands for each of a list. */
export function fieldsAt(place: string, document: CarDocument): readonly Field[] {
  return spread(place, document).flatMap((given) => {
    const path = absentPart(given, document) ?? given;
    const found = schemaAt(path, document);
    return found ? fieldsBelow(path, found.schema, found.isRequired, document) : [];
  });
}

/** The one field at a place; undefined where the schema knows none. */
export function fieldAt(place: string, document: CarDocument): Field | undefined {
  const path = parsePath(place);
  const found = path && schemaAt(path, document);
  return path && found ? fieldOf(path, found.schema, found.isRequired, document) : undefined;
}

/** A place of the document in words, e.g. `Upper link, inner, up`. */
export function placeName(place: string, document: CarDocument | null): string {
  const field = document ? fieldAt(place, document) : undefined;
  const words = field ? [field.group, field.group === "" ? field.label : field.label.toLowerCase()] : plainWords(place);
  const part = WITH_PART[/^(?:right\.)?(\w+)\./.exec(place)?.[1] ?? ""];
  const named = words.filter((each) => each !== "").join(", ");
  return capital(part === undefined ? named : `${part}, ${named.charAt(0).toLowerCase()}${named.slice(1)}`);
}

/** Parts whose name goes without saying in their own step, and nowhere else. */
const WITH_PART: Readonly<Record<string, string>> = { shock: "shock", driveshaft: "driveshaft" };

const plainWords = (place: string): readonly string[] =>
  (parsePath(place) ?? [place]).map((step) => (typeof step === "number" ? `number ${step + 1}` : inWords(step)));

/** The part of the car, not entered so far, that a place lies in: then the question is whether to add it. */
function absentPart(path: Path, document: CarDocument): Path | undefined {
  if (path.length < 2 || OPEN_SECTIONS.includes(sectionOf(path))) return undefined;
  for (let length = 1; length < path.length; length += 1) {
    const above = path.slice(0, length);
    if (valueAt(document, above) === undefined && schemaAt(above, document)?.isRequired === false) return above;
  }
  return undefined;
}

function fieldsBelow(path: Path, schema: Schema, isRequired: boolean, document: CarDocument): readonly Field[] {
  const own = fieldOf(path, schema, isRequired, document);
  if (own.kind !== "section") return [own];
  const value = valueAt(document, path);
  // A part that is not there is one question: add it or not. Sections of wishes and weights are asked right away.
  if (value === undefined && !isRequired && !OPEN_SECTIONS.includes(sectionOf(path))) return [own];
  const form = formOf(schema, value);
  const below = Object.entries(form?.properties ?? {}).flatMap(([name, inner]) =>
    inner.const !== undefined
      ? []
      : fieldsBelow([...path, name], inner, form?.required?.includes(name) ?? false, document),
  );
  return isRemovable(path, isRequired) ? [...below, { ...own, group: below.at(-1)?.group ?? own.group }] : below;
}

/** The last field of a part that the car may do without is the part itself: there it can be taken off again. */
const isRemovable = (path: Path, isRequired: boolean): boolean =>
  !isRequired && !OPEN_SECTIONS.includes(sectionOf(path)) && !(path[0] === "right" && path.length === 2);

/** The section that a path lies in, whichever side it is of. */
const sectionOf = (path: Path): string => String(path[0] === "right" ? path[1] : path[0]);

const OPEN_SECTIONS: readonly string[] = ["targets", "weights", "stops", "rodEnds"];

function fieldOf(path: Path, schema: Schema, isRequired: boolean, document: CarDocument): Field {
  const { meaning, unit, typical, leftOut } = factsOf(schema.description ?? "");
  const dimension = unit === undefined ? undefined : DIMENSIONS[unit];
  const { label, group } = namesOf(path, document);
  return {
    path: formatPath(path),
    kind: kindOf(schema, dimension),
    label,
    group,
    meaning,
    isRequired,
    ...(dimension && { dimension }),
    ...(typical !== undefined && { typical }),
    ...(leftOut !== undefined && { leftOut }),
    ...(schema.enum && { words: schema.enum }),
  };
}

/** By the unit that the schema names; a number without one is a ratio. */
const DIMENSIONS: Readonly<Record<string, Dimension>> = {
  "": "ratio",
  "in or mm": "length",
  deg: "angle",
  "lb or kg": "mass",
  "lb or N": "force",
  "lb/in or N/mm": "rate",
  "psi or bar": "pressure",
  "psi or MPa": "stress",
  "in3 or cm3": "volume",
  "lb ft or N m": "torque",
  "in/s or m/s": "speed",
  "%": "percent",
};

function kindOf(schema: Schema, dimension: Field["dimension"]): FieldKind {
  if (dimension) return "quantity";
  if (schema.enum) return "words";
  if (schema.anyOf?.some(({ properties }) => properties?.["x"])) return "direction";
  if (schema.properties?.["x"] && schema.properties["y"] && schema.properties["z"] && !schema.properties["name"]) {
    return "point";
  }
  if (schema.items) return "list";
  if (typeof schema.additionalProperties === "object") return "map";
  if (schema.properties || schema.oneOf) return "section";
  return "text";
}

/** The schema's description says meaning, unit, typical range and what is assumed, in this order. */
function factsOf(description: string) {
  const match = /^(.*?)(?: Unit: (.*?)\.)?(?: Typically (.*?)\.)?(?: Left out: (.*)\.)?$/s.exec(description);
  return { meaning: match?.[1] ?? description, unit: match?.[2], typical: match?.[3], leftOut: match?.[4] };
}

function schemaAt(
  whole: Path,
  document: CarDocument,
): { readonly schema: Schema; readonly isRequired: boolean } | undefined {
  // The right side's sections are as the left one's; the page's schema tells them once.
  const isRight = whole[0] === "right";
  if (isRight && whole.length === 1) return undefined;
  const path = isRight ? whole.slice(1) : whole;
  const from: unknown = isRight ? document.right : document;
  let schema: Schema | undefined = root;
  let isRequired = true;
  for (let i = 0; i < path.length && schema; i += 1) {
    const step = path[i]!;
    const form: Schema | undefined = formOf(schema, valueAt(from, path.slice(0, i)));
    if (typeof step === "number") {
      schema = form?.items;
      isRequired = true;
    } else {
      const inner: Schema | undefined = form?.properties?.[step];
      isRequired = inner !== undefined && (form?.required?.includes(step) ?? false);
      schema = inner ?? (typeof form?.additionalProperties === "object" ? form.additionalProperties : undefined);
    }
  }
  return schema && { schema, isRequired };
}

/** Of a section that comes in several forms the one that the value is of. */
function formOf(schema: Schema, value: unknown): Schema | undefined {
  if (!schema.oneOf) return schema;
  return schema.oneOf.find(({ properties }) =>
    Object.entries(properties ?? {}).every(
      ([name, inner]) => inner.const === undefined || inner.const === valueAt(value, [name]),
    ),
  );
}

function spread(place: string, document: CarDocument): readonly Path[] {
  const star = place.indexOf("[*]");
  if (star < 0) {
    const path = parsePath(place);
    return path ? [path] : [];
  }
  const list = valueAt(document, parsePath(place.slice(0, star)) ?? []);
  if (!Array.isArray(list)) return [];
  return list.flatMap((_, index) => spread(place.replace("[*]", `[${index}]`), document));
}

/** Names that go without saying under their step's heading. */
const PLAIN_SECTIONS: readonly string[] = ["wheel", "linkage", "driveshaft", "shock", "targets", "weights"];

const SECTION_NAMES: Readonly<Record<string, string>> = {
  targets: "What you are after",
  weights: "Weights",
  stops: "What ends the travel",
  bumpStop: "Bump stop",
  rodEnds: "Rod end",
};

/** Places whose own word says too little without the part that they belong to. */
const PLACE_WORDS: Readonly<Record<string, string>> = {
  "driveshaft.inner": "inner joint",
  "driveshaft.outer": "outer joint",
  "driveshaft.slip": "slip joint",
  "driveshaft.output": "gearbox output",
  "driveshaft.outer.centre": "joint centre",
  "driveshaft.output.point": "joint centre",
  "driveshaft.output.axis": "output shaft points",
  "shock.upper": "upper eye",
  "shock.lower": "lower eye",
  "shock.springs.main": "main spring",
  "shock.springs.tender": "tender spring",
  "shock.gas": "gas in the shock",
  "strap.upper": "upper hole",
  "strap.lower": "lower hole",
  "bumpStop.base": "foot",
  "bumpStop.strikes": "where it lands",
};

const WORDS: Readonly<Record<string, string>> = {
  on: "bolted to",
  x: "forward",
  y: "out",
  z: "up",
  toe: "toe",
  corner: "one rear wheel carries",
  unsprung: "of that, not sprung",
  centreOfGravityHeight: "centre of gravity, height",
  clearanceAtFullBump: "left under the body at full bump",
  pushInLeft: "left to push in",
  datum: "the mark that forward is measured from",
  name: "name",
};

function namesOf(path: Path, document: CarDocument): { readonly label: string; readonly group: string } {
  if (path[0] === "right" && path.length > 1) {
    const { label, group } = namesOf(path.slice(1), { ...document, ...document.right });
    return {
      label,
      group: group === "" ? "Right side" : `Right side, ${group.charAt(0).toLowerCase()}${group.slice(1)}`,
    };
  }
  const words = path.map((step, index) =>
    typeof step === "number"
      ? nameInList(path.slice(0, index + 1), document)
      : (PLACE_WORDS[path.slice(0, index + 1).join(".")] ?? inWords(step)),
  );
  const last = words.at(-1) ?? "";
  const first = String(path[0] ?? "");
  const above = words
    .slice(0, -1)
    .filter((word, index) => word !== "" && !(index === 0 && PLAIN_SECTIONS.includes(first)))
    // One of two springs says that it is a spring.
    .filter((word, index, all) => !(word === "springs" && / spring$/.test(all[index + 1] ?? "")));
  const group =
    SECTION_NAMES[first] !== undefined && path.length > 1
      ? [SECTION_NAMES[first], ...above.filter((word) => word !== inWords(first))].join(", ")
      : capital(above.filter((word) => word !== "links").join(", "));
  return { label: capital(last), group };
}

const nameInList = (path: Path, document: CarDocument): string => {
  const name = valueAt(document, [...path, "name"]);
  return typeof name === "string" ? name : `number ${Number(path.at(-1)) + 1}`;
};

const inWords = (name: string): string =>
  WORDS[name] ??
  (name.includes(".")
    ? name.split(".").map(inWords).join(", ")
    : name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`));

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
