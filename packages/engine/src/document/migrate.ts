type Fields = Readonly<Record<string, unknown>>;

/** One step from a version of the form to the next; says what it changed. */
export interface Migration {
  readonly from: number;
  readonly to: number;
  readonly says: string;
  readonly change: (document: Fields) => Fields;
}

/** Every step ever made, in order. A new version of the form adds one here and raises FORMAT_VERSION. */
export const MIGRATIONS: readonly Migration[] = [
  {
    from: 0,
    to: 1,
    says: '"units" spelled out, the sizes under "tyre" moved into "wheel"',
    change: fromDraft,
  },
];

/** Version 0, the draft form: `units` was `in` or `mm`, and the tyre's sizes had a section of their own. */
function fromDraft(document: Fields): Fields {
  const { tyre, units, wheel, ...rest } = document;
  const systems: Fields = { in: "inch-pound", mm: "metric" };
  const spelled = typeof units === "string" && Object.hasOwn(systems, units) ? systems[units] : units;
  const merged = isFields(tyre) && (wheel === undefined || isFields(wheel)) ? { ...wheel, ...tyre } : wheel;
  const kept = tyre !== undefined && !isFields(tyre) ? { tyre } : {};
  return {
    ...rest,
    ...kept,
    ...(units === undefined ? {} : { units: spelled }),
    ...(merged === undefined ? {} : { wheel: merged }),
  };
}

export interface Migrated {
  readonly document: Fields;
  /** What was changed, oldest first; empty where nothing had to be. */
  readonly says: readonly string[];
}

/** Brings a document of an older version to the present one, step by step. */
export function migrate(document: Fields, version: number, steps: readonly Migration[] = MIGRATIONS): Migrated {
  let now = document;
  let at = version;
  const says: string[] = [];
  for (const step of steps) {
    if (step.from !== at) continue;
    now = { ...step.change(now), armwright: step.to };
    at = step.to;
    says.push(step.says);
  }
  return { document: now, says };
}

const isFields = (value: unknown): value is Fields =>
  typeof value === "object" && value !== null && !Array.isArray(value);
