import { createReadStream } from "node:fs";
import { Readable } from "node:stream";
import type { HttpBindings } from "@hono/node-server";
import { type Context, Hono } from "hono";
import { type CarFolder, MOST_CARS } from "../folder/car-folder.ts";
import { judgeText } from "../folder/judge-text.ts";
import { LARGEST_DOCUMENT } from "../folder/judgement.ts";
import { keepMesh, LARGEST_MESH, meshesIn, meshPath } from "../folder/meshes.ts";
import { isCarName, isMeshName, NAME_RULE } from "../folder/names.ts";
import { isId, readOperations } from "../folder/read-operations.ts";
import { bookRoutes } from "./book-api.ts";
import type { EventStreams } from "./event-streams.ts";
import { firstCar } from "./first-car.ts";
import { OWN_HEADER } from "./guard.ts";
import { chunksOf, limitedBody } from "./limited-body.ts";

/** What the server says about itself. */
export interface Ready {
  readonly armwright: "bench";
  /** Names this run of the server; another one, and revisions have to be read anew. */
  readonly run: string;
  /** Names the folder, so that what waits for one folder is not sent to another. */
  readonly folder: string;
  readonly title: string;
  readonly shared: boolean;
}

type Env = { Bindings: HttpBindings };
type Ask = Context<Env>;

/** Says that what is asked is meant for whatever folder is served. */
const ANY_FOLDER = "1";
const LARGEST_MESSAGE = 1_000_000;

/** Everything under /api. Guards, pairing and rates have been looked at before. */
export function api(folder: CarFolder, streams: EventStreams, ready: Ready): Hono<Env> {
  const app = new Hono<Env>().basePath("/api");
  app.onError((error, c) => c.json(failed(error), 503, { "Retry-After": "2" }));
  app.notFound((c) => refusal(c, 404, "there is nothing of that name"));

  app.use(async (c, next) => {
    const meant = c.req.header(OWN_HEADER) ?? ANY_FOLDER;
    if (meant === ANY_FOLDER || meant === ready.folder) return next();
    return refusal(c, 412, "another folder is served here now: reload the page");
  });

  app.get("/ready", (c) => c.json(ready));
  app.get("/events", (c) => {
    const client = c.req.query("client");
    if (!isId(client)) return refusal(c, 400, "a stream needs the client's id");
    const address = c.env.incoming.socket.remoteAddress ?? "";
    const stream = streams.open(client, Number(c.req.query("heard") ?? 0) || 0, address, ready);
    if (!stream) return refusal(c, 429, "too many pages are open", { "Retry-After": "5" });
    return c.body(stream, 200, { "Content-Type": "text/event-stream; charset=utf-8", "X-Accel-Buffering": "no" });
  });

  app.get("/first", async (c) => c.json({ first: (await firstCar(folder, c.req.query("last"))) ?? null }));
  app.get("/cars", async (c) => c.json(await folder.list()));
  app.get("/cars/:name", async (c) => {
    const state = await (await folder.car(nameOf(c)))?.read();
    return state ? c.json(state) : noCar(c);
  });
  app.put("/cars/:name", (c) => create(c, folder));
  app.delete("/cars/:name", async (c) => {
    const file = await folder.car(nameOf(c));
    if (!(await file?.read())) return noCar(c);
    return (await file?.remove())
      ? c.json({ removed: true })
      : refusal(c, 409, "the file cannot be put into the history");
  });
  app.post("/cars/:name/operations", (c) => operate(c, folder));

  app.get("/cars/:name/history", async (c) => {
    const file = await folder.carOrHistory(nameOf(c));
    return file ? c.json({ versions: await file.versions() }) : noCar(c);
  });
  app.get("/cars/:name/history/:id", async (c) => {
    const text = await (await folder.carOrHistory(nameOf(c)))?.version(c.req.param("id"));
    return text === undefined ? noVersion(c) : c.json({ id: c.req.param("id"), text, ...said(text) });
  });
  app.post("/cars/:name/history/:id/restore", async (c) => {
    const file = await folder.carOrHistory(nameOf(c));
    const text = await file?.version(c.req.param("id"));
    if (!file || text === undefined) return noVersion(c);
    const client = c.req.query("client");
    if (!(await file.restore(isId(client) ? client : "someone", text))) {
      return refusal(c, 409, "what stands there is no text that the history could hold; move the file away first");
    }
    return c.json(await file.read());
  });

  bookRoutes(app, folder);

  app.get("/meshes", async (c) => c.json({ meshes: await meshesIn(folder.root) }));
  app.get("/meshes/:file", async (c) => {
    const path = await meshPath(folder.root, c.req.param("file"));
    if (path === undefined) return refusal(c, 404, "there is no mesh of that name");
    const stream = Readable.toWeb(createReadStream(path)) as unknown as ReadableStream<Uint8Array>;
    return c.body(stream, 200, { "Content-Type": "application/octet-stream" });
  });
  app.put("/meshes/:file", (c) => takeMesh(c, folder));
  return app;
}

async function create(c: Ask, folder: CarFolder): Promise<Response> {
  const wanted = nameOf(c);
  const bytes = await limitedBody(c.req.raw, LARGEST_DOCUMENT);
  if (!bytes) return refusal(c, 413, "a car document has 1 MB at most");
  const text = decoded(bytes);
  const faults = text === undefined ? [] : judgeText(text);
  if (text === undefined || ("condition" in faults && faults.condition === "broken")) {
    return c.json({ error: "this is no car document", ...("faults" in faults ? { faults: faults.faults } : {}) }, 422);
  }
  const isRenamed = c.req.query("another") === "yes";
  if (!isRenamed && !isCarName(wanted)) return refusal(c, 400, NAME_RULE);
  const { cars } = await folder.list();
  if (cars.length >= MOST_CARS) return refusal(c, 409, `a folder holds ${MOST_CARS} cars at most`);
  const taken = cars.find(({ name }) => name.toLowerCase() === wanted.toLowerCase() && name !== wanted);
  const name = isRenamed ? await folder.freeName(wanted) : wanted;
  const client = c.req.query("client");
  const isMade = !taken || isRenamed ? await folder.place(name).create(isId(client) ? client : "someone", text) : false;
  if (!isMade) return refusal(c, 409, `there is a car ${JSON.stringify(taken?.name ?? name)} already`);
  return c.json(await folder.place(name).read(), 201);
}

async function operate(c: Ask, folder: CarFolder): Promise<Response> {
  const bytes = await limitedBody(c.req.raw, LARGEST_MESSAGE);
  if (!bytes) return refusal(c, 413, "a message has 1 MB at most");
  const reading = readOperations(parsed(decoded(bytes)));
  if (!reading.ok) return refusal(c, 400, reading.because);
  const applied = await (await folder.car(nameOf(c)))?.apply(reading.client, reading.operations);
  if (applied?.ok) return c.json({ state: applied.state, outcomes: applied.outcomes });
  if (!applied || applied.why === "gone") return noCar(c);
  return c.json({ error: "the file is broken; mend it or bring an earlier version back", state: applied.state }, 409);
}

async function takeMesh(c: Ask, folder: CarFolder): Promise<Response> {
  const file = c.req.param("file") ?? "";
  if (!isMeshName(file)) return refusal(c, 400, `${NAME_RULE}; then comes .stl, .obj or .glb`);
  const tooLarge = () => refusal(c, 413, "a mesh has 100 MB at most");
  if (Number(c.req.header("content-length") ?? 0) > LARGEST_MESH) return tooLarge();
  const kept = await keepMesh(folder.root, file, chunksOf(c.req.raw));
  if (kept === "too large") return tooLarge();
  if (kept === "taken") return refusal(c, 409, `there is a mesh ${file} already`);
  if (kept === "too many") return refusal(c, 409, "a folder holds 100 meshes at most");
  return c.json({ file }, 201);
}

const nameOf = (c: Ask): string => c.req.param("name") ?? "";

const said = (text: string) => {
  const { condition, faults } = judgeText(text);
  return { condition, faults };
};

const noCar = (c: Ask): Response => refusal(c, 404, "there is no car of that name");
const noVersion = (c: Ask): Response => refusal(c, 404, "there is no such earlier version");

type Status = 400 | 404 | 409 | 412 | 413 | 422 | 429;
const refusal = (c: Ask, status: Status, error: string, headers: Record<string, string> = {}): Response =>
  c.json({ error }, status, headers);

function decoded(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

function parsed(text: string | undefined): unknown {
  try {
    return text === undefined ? undefined : JSON.parse(text);
  } catch {
    return undefined;
  }
}

const DISK: Readonly<Record<string, string>> = {
  ENOSPC: "the disk is full: nothing was saved",
  EROFS: "the disk is read-only: nothing was saved",
  EACCES: "no permission to write in the folder: nothing was saved",
  EPERM: "no permission to write in the folder: nothing was saved",
};

function failed(error: Error): { readonly error: string } {
  const code = "code" in error && typeof error.code === "string" ? error.code : "";
  return { error: DISK[code] ?? "the server could not do it: nothing was saved" };
}
