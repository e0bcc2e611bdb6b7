import type { Car } from "@armwright/engine";

/** A car as it was read before, by the bench or by this page: drawn before what reads documents has been fetched. */
export interface FirstCar {
  readonly name: string;
  readonly car: Car;
}

const KEPT = "armwright:first";
/** Another build may have cars of another make. */
const BUILD = import.meta.url;

/**
 * The car that the page is about to open, read already: by the bench that serves it; out of reach of one, as this page had it
 * last; on the very first visit to a page without a bench, the demo car of the build. Undefined where none is known, and
 * where edits wait to be sent, which it would not show.
 */
export async function firstCar(last: string | null): Promise<FirstCar | undefined> {
  if (keysOf("armwright:waiting:").length > 0) return undefined;
  const query = last === null ? "" : `?last=${encodeURIComponent(last)}`;
  const served = await asked(`./api/first${query}`);
  if (served !== "none") return served;
  const kept = keptCar();
  if (kept) return kept.name === last ? kept : undefined;
  const isNew = last === null && keysOf("armwright").length === 0;
  const demo = isNew ? await asked("./first-car.json") : "none";
  return demo === "none" ? undefined : demo;
}

/** Keeps the car for the next visit. */
export function keepFirstCar(name: string, { survey: _, ...car }: Car): void {
  try {
    localStorage.setItem(KEPT, JSON.stringify({ build: BUILD, name, car }));
  } catch {
    // A browser that keeps nothing still works.
  }
}

/** Keeps none: what was kept is older than the car is now. */
export function forgetFirstCar(): void {
  try {
    localStorage.removeItem(KEPT);
  } catch {
    // A browser that keeps nothing still works.
  }
}

/**
 * `none` where nobody answers; undefined where a bench has no such car without faults, does not know this device, or is too
 * slow to be waited for: it may have a newer car than was kept.
 */
async function asked(address: string): Promise<FirstCar | undefined | "none"> {
  try {
    const answer = await fetch(address, { cache: "no-store", signal: AbortSignal.timeout(3000) });
    if (answer.status === 401) return undefined;
    const said = answer.ok ? ((await answer.json()) as { readonly first?: unknown }) : {};
    return "first" in said ? made(said.first) : "none";
  } catch (error) {
    return error instanceof DOMException && error.name === "TimeoutError" ? undefined : "none";
  }
}

function keptCar(): FirstCar | undefined {
  try {
    const kept = JSON.parse(localStorage.getItem(KEPT) ?? "{}") as { readonly build?: unknown };
    return kept.build === BUILD ? made(kept) : undefined;
  } catch {
    return undefined;
  }
}

const made = (value: unknown): FirstCar | undefined =>
  typeof value === "object" && value !== null && "name" in value && "car" in value ? (value as FirstCar) : undefined;

function keysOf(start: string): readonly string[] {
  try {
    return Object.keys(localStorage).filter((key) => key.startsWith(start));
  } catch {
    return [];
  }
}
