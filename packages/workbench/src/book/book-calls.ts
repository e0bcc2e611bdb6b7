/** Paper that the server prints on. */
export type Paper = "letter" | "a4";

/** A book that was made before: what its sheets carry. */
export interface Printed {
  readonly fingerprint: string;
  readonly day: string;
  readonly paper: Paper;
}

/** What the server says of a car's book. */
export interface BookContents {
  readonly fingerprint: string;
  readonly sheets: readonly { readonly id: string; readonly title: string }[];
  readonly files: readonly string[];
  readonly printed: readonly Printed[];
}

const base = (name: string): string => `./api/cars/${encodeURIComponent(name)}/book`;

/** Where a sheet's picture and a file are. `print` changes with the car, so that no old picture is shown. */
export const sheetAddress = (name: string, id: string, paper: Paper, print: string): string =>
  `${base(name)}/sheets/${encodeURIComponent(id)}?paper=${paper}&of=${print}`;
export const fileAddress = (name: string, file: string, paper: Paper): string =>
  `${base(name)}/files/${encodeURIComponent(file)}?paper=${paper}`;

/** The document that a printed sheet was made from, which the history may have let go; undefined where there is none. */
export async function printedText(name: string, fingerprint: string): Promise<string | undefined> {
  const answer = await fetch(`${base(name)}/printed/${encodeURIComponent(fingerprint)}`, {
    cache: "no-store",
    signal: AbortSignal.timeout(30_000),
  });
  if (answer.status === 404) return undefined;
  if (!answer.ok) throw new Error(`the server answered ${answer.status}`);
  return answer.text();
}

/** A sheet's picture as its text, to read its words out of. */
export async function sheetText(address: string): Promise<string> {
  const answer = await fetch(address, { signal: AbortSignal.timeout(30_000) });
  if (!answer.ok) throw new Error(`the server answered ${answer.status}`);
  return answer.text();
}

/** A file of the book, made now; why there is none in words. Takes a second or two. */
export async function bookFile(name: string, file: string, paper: Paper): Promise<Blob | string> {
  try {
    const answer = await fetch(fileAddress(name, file, paper), {
      cache: "no-store",
      signal: AbortSignal.timeout(120_000),
    });
    if (answer.ok) return await answer.blob();
    return ((await answer.json()) as { readonly error?: string }).error ?? "the server refused";
  } catch {
    return "the server is out of reach: paper waits until it is back";
  }
}

/** The book's contents, or why there are none, in words. */
export async function bookContents(name: string, paper: Paper): Promise<BookContents | string> {
  try {
    const answer = await fetch(`${base(name)}?paper=${paper}`, {
      cache: "no-store",
      signal: AbortSignal.timeout(30_000),
    });
    const body = (await answer.json()) as BookContents & { readonly error?: string };
    return answer.ok ? body : (body.error ?? "the server refused");
  } catch {
    return "the server is out of reach: paper waits until it is back";
  }
}
