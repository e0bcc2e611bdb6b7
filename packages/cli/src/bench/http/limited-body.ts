/** A request's body up to so many bytes; undefined where there are more, counted while they come. */
export async function limitedBody(request: Request, most: number): Promise<Uint8Array | undefined> {
  if (Number(request.headers.get("content-length") ?? 0) > most) return undefined;
  const chunks: Uint8Array[] = [];
  let bytes = 0;
  for await (const chunk of chunksOf(request)) {
    bytes += chunk.byteLength;
    if (bytes > most) return undefined;
    chunks.push(chunk);
  }
  return Buffer.concat(chunks);
}

export async function* chunksOf(request: Request): AsyncGenerator<Uint8Array> {
  const reader = request.body?.getReader();
  if (!reader) return;
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return;
      yield value;
    }
  } finally {
    // Given up in the middle, the rest is left; cancelling would close the connection before the answer is out.
    reader.releaseLock();
  }
}
