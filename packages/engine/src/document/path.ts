/** Place of a value in a document: names of fields and, in lists, counts from 0. */
export type Path = readonly (string | number)[];

const PLAIN_NAME = /^[A-Za-z_$][\w$]*$/;

/** `shock.upper.y`, `keepOuts[0].centre`, `rodEnds["lowerArm.innerFront"].hand`. */
export function formatPath(path: Path): string {
  return path
    .map((part, index) => {
      if (typeof part === "number") return `[${part}]`;
      if (!PLAIN_NAME.test(part)) return `[${JSON.stringify(part)}]`;
      return index === 0 ? part : `.${part}`;
    })
    .join("");
}

const STEP = /^(?:\.?([A-Za-z_$][\w$]*)|\[(\d+)\]|\[("(?:[^"\\]|\\.)*")\])/;

/** The inverse of `formatPath`; undefined where the text is not a path. */
export function parsePath(text: string): Path | undefined {
  const path: (string | number)[] = [];
  let rest = text;
  while (rest !== "") {
    const step = STEP.exec(rest);
    if (!step) return undefined;
    if (step[1] !== undefined) path.push(step[1]);
    else if (step[2] !== undefined) path.push(Number(step[2]));
    else {
      const name = unquote(step[3] ?? "");
      if (name === undefined) return undefined;
      path.push(name);
    }
    rest = rest.slice(step[0].length);
  }
  return path;
}

function unquote(quoted: string): string | undefined {
  try {
    const name: unknown = JSON.parse(quoted);
    return typeof name === "string" ? name : undefined;
  } catch {
    return undefined;
  }
}

/** What stands at the place, or undefined. Only own fields count. */
export function valueAt(root: unknown, path: Path): unknown {
  let value: unknown = root;
  for (const part of path) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, part)) return undefined;
    value = (value as Readonly<Record<string | number, unknown>>)[part];
  }
  return value;
}
