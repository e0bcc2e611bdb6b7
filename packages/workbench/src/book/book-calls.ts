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
