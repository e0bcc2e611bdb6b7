export interface StreamMessage {
  readonly event: string;
  readonly data: unknown;
}

/** A stream that says nothing for so long is cut somewhere on the way, ms. The server beats every 12 s. */
const SILENT = 30_000;

/**
 * Reads server-sent events until the stream ends, breaks or falls silent. Through fetch and not EventSource, so that
 * when and how to come back is ours to say. Gives the answer's status where there is no stream.
 */
export async function readEvents(
  fetchIt: typeof fetch,
  address: string,
  stop: AbortSignal,
  onMessage: (message: StreamMessage) => void,
): Promise<number> {
  const cut = new AbortController();
  const end = () => cut.abort();
  stop.addEventListener("abort", end);
  let silence = setTimeout(end, SILENT);
  try {
    const answer = await fetchIt(address, { signal: cut.signal, headers: { "x-armwright": "1" }, cache: "no-store" });
    const reader = answer.ok ? answer.body?.getReader() : undefined;
    if (!reader) return answer.status;
    const decoder = new TextDecoder();
    let rest = "";
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return answer.status;
      clearTimeout(silence);
      silence = setTimeout(end, SILENT);
      const parts = (rest + decoder.decode(value, { stream: true })).split("\n\n");
      rest = parts.pop() ?? "";
      for (const part of parts) {
        const message = parsed(part);
        if (message) onMessage(message);
      }
    }
  } finally {
    clearTimeout(silence);
    stop.removeEventListener("abort", end);
    cut.abort();
  }
}

function parsed(part: string): StreamMessage | undefined {
  const event = /^event: (.*)$/m.exec(part)?.[1];
  const data = /^data: (.*)$/m.exec(part)?.[1];
  return event !== undefined && data !== undefined ? { event, data: JSON.parse(data) as unknown } : undefined;
}
