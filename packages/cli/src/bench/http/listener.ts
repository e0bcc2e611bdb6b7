import type { IncomingMessage, RequestListener, ServerResponse } from "node:http";
import { getRequestListener } from "@hono/node-server";
import { guardHead, type Refused } from "./guard.ts";
import { setGuardHeaders } from "./headers.ts";
import { limitedBody } from "./limited-body.ts";
import { pageFile } from "./page-files.ts";
import { cookieOf, type Pairing } from "./pairing.ts";
import { PAIRING_HINT, PAIRING_SCRIPT, PAIRING_STYLE, PAIRING_WRONG, pairingPage } from "./pairing-page.ts";
import { RateLimit } from "./rate-limit.ts";
import { readTarget, type Target } from "./request-target.ts";

export interface Door {
  /** The built page's folder. */
  readonly app: string;
  readonly api: { readonly fetch: (request: Request, env: object) => Response | Promise<Response> };
  /** Host headers that are answered. */
  readonly hosts: ReadonlySet<string>;
  readonly cookie: string;
  readonly pairing: Pairing | undefined;
}

/** Everything that is asked comes through here: head, rate, pairing; then the page's files or the API. */
export function listener({ app, api, hosts, cookie, pairing }: Door): RequestListener {
  const asks = new RateLimit({ burst: 400, perSecond: 100 });
  const writes = new RateLimit({ burst: 100, perSecond: 40 });
  const pairings = new RateLimit({ burst: 10, perSecond: 1 / 6 });

  const answer = async (
    request: Request,
    target: Target,
    token: string | undefined,
    env: object,
  ): Promise<Response> => {
    const { method } = request;
    if (pairing && (target.segments[0] === "pair" || target.segments[0]?.startsWith("pair."))) {
      return pairingAnswer(request, target, pairing, cookie, pairings);
    }
    if (pairing && !pairing.isPaired(token)) {
      const isVisit = target.segments.length === 0 && (method === "GET" || method === "HEAD");
      if (isVisit) return page(pairingPage(PAIRING_HINT), 401);
      return Response.json({ error: "this device is not paired" }, { status: 401 });
    }
    if (target.isApi) return api.fetch(request, env);
    if (method !== "GET" && method !== "HEAD") return plain(405, "not a way to ask here");
    const file = await pageFile(app, target.segments, request.headers.get("if-none-match") ?? undefined);
    return file ?? plain(404, "there is nothing of that name");
  };

  const look = (incoming: IncomingMessage, target: Target): (Refused & { readonly wait?: number }) | undefined => {
    const refused = guardHead(incoming, target, hosts);
    if (refused) return refused;
    const address = incoming.socket.remoteAddress ?? "";
    const isWrite = incoming.method !== "GET" && incoming.method !== "HEAD";
    const wait = Math.max(asks.take(address, Date.now()), isWrite ? writes.take(address, Date.now()) : 0);
    return wait > 0 ? { status: 429, says: `too much at once; again in ${wait} s`, wait } : undefined;
  };

  return (incoming: IncomingMessage, outgoing: ServerResponse): void => {
    setGuardHeaders(outgoing);
    outgoing.once("finish", () => letGo(incoming));
    const target = readTarget(incoming.url ?? "");
    const refused = target ? look(incoming, target) : NO_ADDRESS;
    if (!target || refused) {
      refuse(outgoing, refused ?? NO_ADDRESS);
      return;
    }
    const token = cookieOf(incoming.headers.cookie, cookie);
    const handle = getRequestListener((request, env) => answer(request, target, token, env), {
      overrideGlobalObjects: false,
      autoCleanupIncoming: false,
    });
    void handle(incoming, outgoing);
  };
}

const LINGER = 2000;

/** A body that is still coming after its answer: the sender gets a moment to read the answer, then the line is cut. */
function letGo(incoming: IncomingMessage): void {
  if (incoming.complete) return;
  setTimeout(() => {
    if (!incoming.complete) incoming.socket.destroy();
  }, LINGER).unref();
}

/** Ends a request whose body is not read. */
function refuse(outgoing: ServerResponse, { status, says, wait }: Refused & { readonly wait?: number }): void {
  if (wait !== undefined) outgoing.setHeader("Retry-After", String(wait));
  outgoing.writeHead(status, { "Content-Type": "application/json; charset=utf-8" });
  outgoing.end(JSON.stringify({ error: says }));
}

const NO_ADDRESS: Refused = { status: 400, says: "this is no address of Armwright's" };

const LONGEST_SECRET = 1000;

async function pairingAnswer(
  request: Request,
  { segments }: Target,
  pairing: Pairing,
  cookie: string,
  pairings: RateLimit,
): Promise<Response> {
  const asked = segments.join("/");
  const isRead = request.method === "GET" || request.method === "HEAD";
  if (isRead && asked === "pair") return page(pairingPage(PAIRING_HINT), 200);
  if (isRead && asked === "pair.js") return typed(PAIRING_SCRIPT, "text/javascript; charset=utf-8");
  if (isRead && asked === "pair.css") return typed(PAIRING_STYLE, "text/css; charset=utf-8");
  if (request.method !== "POST" || asked !== "pair") return plain(404, "there is nothing of that name");
  // All addresses together: a secret is not to be guessed from many at once.
  const wait = pairings.take("everyone", Date.now());
  if (wait > 0) return plain(429, `too many tries; again in ${wait} s`, { "Retry-After": String(wait) });
  const body = await limitedBody(request, LONGEST_SECRET);
  if (!body) return plain(413, "a secret is shorter");
  const secret = new URLSearchParams(Buffer.from(body).toString("utf8")).get("secret") ?? "";
  const token = pairing.pair(secret);
  if (token === undefined) return page(pairingPage(PAIRING_WRONG), 403);
  const month = 30 * 24 * 3600;
  return new Response(null, {
    status: 303,
    headers: { Location: "/", "Set-Cookie": `${cookie}=${token}; HttpOnly; SameSite=Strict; Path=/; Max-Age=${month}` },
  });
}

// The policy of the other pages would hide from us that the form was sent by this one.
const page = (html: string, status: number): Response =>
  new Response(html, {
    status,
    headers: { "Content-Type": "text/html; charset=utf-8", "Referrer-Policy": "same-origin" },
  });

const typed = (text: string, kind: string): Response => new Response(text, { headers: { "Content-Type": kind } });

const plain = (status: number, says: string, headers: Readonly<Record<string, string>> = {}): Response =>
  Response.json({ error: says }, { status, headers });
