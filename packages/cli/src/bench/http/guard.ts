import type { IncomingMessage } from "node:http";
import type { Target } from "./request-target.ts";

export interface Refused {
  readonly status: number;
  readonly says: string;
}

const METHODS: ReadonlySet<string> = new Set(["GET", "HEAD", "POST", "PUT", "DELETE"]);

/** A header that a page of another site cannot set without asking first, and asking is never answered. */
export const OWN_HEADER = "x-armwright";

/**
 * Whether a request may be looked at, by its head alone: it names this server by an address that was printed (else a
 * name that was bent to this machine), and it does not come from a page of another site.
 */
export function guardHead(incoming: IncomingMessage, target: Target, hosts: ReadonlySet<string>): Refused | undefined {
  const { method = "", headers } = incoming;
  if (!METHODS.has(method) || (method === "HEAD" && target.isApi))
    return { status: 405, says: "not a way to ask here" };
  const host = headers.host ?? "";
  const named = incoming.rawHeaders.filter((name, index) => index % 2 === 0 && name.toLowerCase() === "host").length;
  if (named !== 1 || !hosts.has(host)) {
    return { status: 421, says: "this address was not printed by Armwright; use the one that was" };
  }
  const foreign: Refused = { status: 403, says: "refused: the request comes from a page of another site" };
  if (headers.origin !== undefined && headers.origin !== `http://${host}`) return foreign;
  const site = headers["sec-fetch-site"];
  const isWrite = method !== "GET" && method !== "HEAD";
  if (site !== undefined && site !== "same-origin") {
    const isVisit = headers["sec-fetch-mode"] === "navigate" && headers["sec-fetch-dest"] === "document";
    const isTyped = site === "none";
    if (isWrite || (!isTyped && (target.isApi || !isVisit))) return foreign;
  }
  if (isWrite && target.isApi && headers[OWN_HEADER] === undefined) {
    return { status: 403, says: `a change needs the header ${OWN_HEADER}` };
  }
  return undefined;
}
