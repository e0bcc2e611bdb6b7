import type { Condition, Listing, SaidFault, Version } from "./source.ts";
import type { FieldOperation } from "./waiting-operations.ts";

/** What the server says about itself. */
export interface Ready {
  readonly armwright: "bench";
  readonly run: string;
  readonly folder: string;
  readonly title: string;
  readonly shared: boolean;
}

/** A car document as the server has it. */
export interface ServedCar {
  readonly name: string;
  readonly revision: number;
  readonly text: string;
  readonly condition: Condition;
  readonly faults: readonly SaidFault[];
}

export interface Outcome {
  readonly id: string;
  readonly outcome: "done" | "done before" | "refused";
  readonly because?: string;
  readonly replaced?: unknown;
}

/** An answer, or why there is none: status 0 where the server was not reached. */
export type Answer<T> =
  | { readonly ok: true; readonly body: T }
  | {
      readonly ok: false;
      readonly status: number;
      readonly error: string;
      readonly wait: number;
      readonly body: unknown;
    };

/** Longest wait for an answer, ms; on a garage's network a lost one is noticed late. */
const PATIENCE = 15_000;

export type ServerCalls = ReturnType<typeof serverCalls>;

/**
 * The calls of the server's API, below `base` (the page's own folder). Each says which served folder it is meant for,
 * and a server of another one refuses it; "1" for any.
 */
export function serverCalls(base: string, client: string, folder: string, fetchIt: typeof fetch) {
  const call = async <T>(method: string, path: string, body?: BodyInit, patience = PATIENCE): Promise<Answer<T>> => {
    try {
      const answer = await fetchIt(`${base}api/${path}`, {
        method,
        headers: { "x-armwright": folder, ...(typeof body === "string" ? { "content-type": "application/json" } : {}) },
        cache: "no-store",
        signal: AbortSignal.timeout(patience),
        ...(body === undefined ? {} : { body }),
      });
      const said = (await answer.json().catch(() => ({}))) as T & { readonly error?: string };
      if (answer.ok) return { ok: true, body: said };
      const wait = Number(answer.headers.get("retry-after") ?? 0) * 1000;
      return { ok: false, status: answer.status, error: said.error ?? "the server refused", wait, body: said };
    } catch {
      return { ok: false, status: 0, error: "the server is out of reach", wait: 0, body: undefined };
    }
  };
  const named = (name: string): string => `cars/${encodeURIComponent(name)}`;
  return {
    ready: () => call<Ready>("GET", "ready"),
    list: () => call<Listing>("GET", "cars"),
    car: (name: string) => call<ServedCar>("GET", named(name)),
    send: (name: string, author: string, operations: readonly FieldOperation[]) =>
      call<{ state: ServedCar; outcomes: readonly Outcome[] }>(
        "POST",
        `${named(name)}/operations`,
        JSON.stringify({ client: author, operations }),
      ),
    create: (name: string, text: string) => call<ServedCar>("PUT", `${named(name)}?another=yes&client=${client}`, text),
    remove: (name: string) => call<unknown>("DELETE", named(name)),
    history: (name: string) => call<{ versions: readonly Version[] }>("GET", `${named(name)}/history`),
    version: (name: string, id: string) => call<{ text: string }>("GET", `${named(name)}/history/${id}`),
    restore: (name: string, id: string) =>
      call<ServedCar>("POST", `${named(name)}/history/${id}/restore?client=${client}`),
    keepMesh: (file: string, bytes: Uint8Array<ArrayBuffer>) =>
      call<unknown>("PUT", `meshes/${encodeURIComponent(file)}`, new Blob([bytes]), 600_000),
    readMesh: async (file: string): Promise<Uint8Array<ArrayBuffer> | undefined> => {
      const answer = await fetchIt(`${base}api/meshes/${encodeURIComponent(file)}`).catch(() => undefined);
      return answer?.ok ? new Uint8Array(await answer.arrayBuffer()) : undefined;
    },
  };
}
