import { fingerprintOf, readCarDocument } from "@armwright/engine/document";
import type { HttpBindings } from "@hono/node-server";
import type { Context, Hono } from "hono";
import { localDay } from "../../local-day.ts";
import type { CarFolder } from "../folder/car-folder.ts";
import { LARGEST_DOCUMENT } from "../folder/judgement.ts";
import { printedCar, printedOf, rememberPrinted } from "../folder/printed.ts";

type Env = { Bindings: HttpBindings };
type Ask = Context<Env>;

/** A book as it was last made: kept for the next page that is asked of it. */
interface Made {
  readonly key: string;
  readonly fingerprint: string;
  readonly day: string;
  /** The document that it is made of. */
  readonly text: string;
  readonly sheets: readonly { readonly id: string; readonly title: string; readonly svg: () => string }[];
  readonly files: readonly { readonly name: string; readonly make: () => Uint8Array | Promise<Uint8Array> }[];
}

/**
 * The build book of a car: its sheets as pictures, its PDF and its files. One book at a time is made and kept, since making
 * one takes a second or two; what is asked meanwhile waits.
 */
export function bookRoutes(app: Hono<Env>, folder: CarFolder): void {
  let last: Made | undefined;
  let queue: Promise<unknown> = Promise.resolve();
  const alone = <T>(work: () => Promise<T>): Promise<T> => {
    const done = queue.then(work, work);
    queue = done.catch(() => undefined);
    return done;
  };
  const made = (c: Ask): Promise<Made | Response> =>
    alone(async () => {
      const paper = c.req.query("paper") ?? "letter";
      if (paper !== "letter" && paper !== "a4") return c.json({ error: "paper is letter or a4" }, 400);
      const name = c.req.param("name") ?? "";
      const state = await (await folder.car(name))?.read();
      if (!state) return c.json({ error: "there is no car of that name" }, 404);
      const reading = readCarDocument(state.text);
      if (!reading.ok) return c.json({ error: "the car has faults: mend them before anything is printed" }, 409);
      const day = localDay(new Date());
      const fingerprint = fingerprintOf(reading.document);
      const key = `${name} ${fingerprint} ${paper} ${day}`;
      if (last?.key !== key) last = { key, fingerprint, day, text: state.text, ...(await bookOf(reading, paper, day)) };
      return last;
    });

  app.get("/cars/:name/book", async (c) => {
    const book = await made(c);
    if (book instanceof Response) return book;
    const printed = await printedOf(folder.root, c.req.param("name"));
    return c.json({
      fingerprint: book.fingerprint,
      sheets: book.sheets.map(({ id, title }) => ({ id, title })),
      files: book.files.map(({ name }) => name),
      printed,
    });
  });
  app.get("/cars/:name/book/sheets/:id", async (c) => {
    const book = await made(c);
    if (book instanceof Response) return book;
    const sheet = book.sheets.find(({ id }) => id === c.req.param("id"));
    if (!sheet) return c.json({ error: "there is no sheet of that name" }, 404);
    return c.body(sheet.svg(), 200, { "Content-Type": "image/svg+xml; charset=utf-8" });
  });
  app.get("/cars/:name/book/printed/:fingerprint", async (c) => {
    const { name, fingerprint } = c.req.param();
    const text = await printedCar(folder.root, name, fingerprint, LARGEST_DOCUMENT);
    return text === undefined
      ? c.json({ error: "no book with that fingerprint is known" }, 404)
      : c.body(text, 200, { "Content-Type": "application/json; charset=utf-8" });
  });
  app.get("/cars/:name/book/files/:file", async (c) => {
    const book = await made(c);
    if (book instanceof Response) return book;
    const file = book.files.find(({ name }) => name === c.req.param("file"));
    if (!file) return c.json({ error: "there is no file of that name" }, 404);
    const bytes = await alone(async () => file.make());
    const paper = c.req.query("paper") === "a4" ? "a4" : "letter";
    if (file.name.endsWith(".pdf")) {
      const { fingerprint, day, text } = book;
      await rememberPrinted(folder.root, c.req.param("name"), { fingerprint, day, paper }, text);
    }
    return c.body(new Uint8Array(bytes), 200, {
      "Content-Type": file.name.endsWith(".pdf") ? "application/pdf" : "application/octet-stream",
      "Content-Disposition": `attachment; filename="${file.name}"`,
    });
  });
}

type Reading = Extract<ReturnType<typeof readCarDocument>, { ok: true }>;

async function bookOf(
  { car, document }: Reading,
  paper: "letter" | "a4",
  day: string,
): Promise<Pick<Made, "sheets" | "files">> {
  // Loaded at the first book: the page description's writer is large.
  const [{ makeBook, leafSvg }, { study }] = await Promise.all([
    import("@armwright/book"),
    import("@armwright/engine"),
  ]);
  const made = study(car);
  const { leaves, files } = makeBook(made, document, { paper, date: new Date(`${day}T00:00:00Z`) });
  return {
    sheets: leaves.map((leaf) => ({
      id: leaf.id,
      title: leaf.title,
      svg: () => leafSvg(leaf),
    })),
    files,
  };
}
