import type { FolderEvent } from "../folder/car-folder.ts";
import type { Overruled } from "../folder/recent-writes.ts";

/** Said to one client, and kept until it says that it has heard it. */
interface Notice {
  readonly number: number;
  readonly at: number;
  readonly body: Omit<Overruled, "to"> & { readonly name: string };
}

interface Stream {
  readonly client: string;
  readonly address: string;
  readonly controller: ReadableStreamDefaultController<Uint8Array>;
}

const MOST_STREAMS = 64;
const MOST_FOR_ADDRESS = 24;
const MOST_NOTICES = 50;
const MOST_CLIENTS = 500;
/** A reader that is this far behind is let go; it comes back and reads the newest. Bytes. */
const FARTHEST_BEHIND = 8_000_000;
const BEAT_EVERY = 12_000;
const encoder = new TextEncoder();

/** The open event streams: one a page. */
export class EventStreams {
  readonly #streams = new Set<Stream>();
  readonly #notices = new Map<string, Notice[]>();
  readonly #beat: NodeJS.Timeout;
  #number = Date.now() * 1000;

  constructor() {
    this.#beat = setInterval(() => {
      for (const stream of this.#streams) this.#write(stream, ": beat\n\n");
    }, BEAT_EVERY);
    this.#beat.unref();
  }

  /** Opens a stream for a client that has heard the notices up to `heard`; undefined where too many are open. */
  open(client: string, heard: number, address: string, hello: unknown): ReadableStream<Uint8Array> | undefined {
    const sameAddress = [...this.#streams].filter((stream) => stream.address === address).length;
    if (this.#streams.size >= MOST_STREAMS || sameAddress >= MOST_FOR_ADDRESS) return undefined;
    let stream: Stream | undefined;
    return new ReadableStream<Uint8Array>(
      {
        start: (controller) => {
          stream = { client, address, controller };
          this.#streams.add(stream);
          this.#write(stream, message("hello", hello));
          const waiting = (this.#notices.get(client) ?? []).filter(({ number }) => number > heard);
          this.#notices.set(client, waiting);
          for (const notice of waiting)
            this.#write(stream, message("overruled", { number: notice.number, ...notice.body }));
        },
        cancel: () => {
          if (stream) this.#streams.delete(stream);
        },
      },
      new ByteLengthQueuingStrategy({ highWaterMark: FARTHEST_BEHIND }),
    );
  }

  send(event: FolderEvent): void {
    if (event.kind === "overruled") {
      this.#notify(event);
      return;
    }
    const { kind, ...body } = event;
    for (const stream of this.#streams) this.#write(stream, message(kind, body));
  }

  close(): void {
    clearInterval(this.#beat);
    for (const stream of this.#streams) {
      try {
        stream.controller.close();
      } catch {
        // The reader went first.
      }
    }
    this.#streams.clear();
  }

  #notify({ to, name, path, yours, theirs, by }: FolderEvent & { readonly kind: "overruled" }): void {
    this.#number += 1;
    const notice: Notice = {
      number: this.#number,
      at: Date.now(),
      body: { name, path, yours, theirs, by },
    };
    const waiting = [...(this.#notices.get(to) ?? []), notice].slice(-MOST_NOTICES);
    this.#notices.delete(to);
    this.#notices.set(to, waiting);
    if (this.#notices.size > MOST_CLIENTS) this.#notices.delete(this.#notices.keys().next().value ?? "");
    for (const stream of this.#streams) {
      if (stream.client === to) this.#write(stream, message("overruled", { number: notice.number, ...notice.body }));
    }
  }

  #write(stream: Stream, text: string): void {
    try {
      if ((stream.controller.desiredSize ?? 0) <= 0) throw new Error("too far behind");
      stream.controller.enqueue(encoder.encode(text));
    } catch (error) {
      this.#streams.delete(stream);
      try {
        stream.controller.error(error);
      } catch {
        // It was closed already.
      }
    }
  }
}

const message = (event: string, body: unknown): string => `event: ${event}\ndata: ${JSON.stringify(body)}\n\n`;
