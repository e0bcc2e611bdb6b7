import { randomBytes } from "node:crypto";
import { createServer, type RequestListener, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { CarFolder } from "./folder/car-folder.ts";
import { CAR_FORMS } from "./folder/judge-text.ts";
import { api } from "./http/api.ts";
import { EventStreams } from "./http/event-streams.ts";
import { listener } from "./http/listener.ts";
import { Pairing } from "./http/pairing.ts";

export interface BenchOptions {
  /** The folder of the car documents; has to exist. */
  readonly folder: string;
  /** The built page's folder. */
  readonly app: string;
  /** 0 for any that is free. */
  readonly port: number;
  /** This machine's address in the local network, where the bench is shared. */
  readonly share?: string;
  /** Told the first secret, and a new one whenever a device has used the last. */
  readonly onSecret?: (secret: string, bench: { readonly link: (secret: string) => string }) => void;
}

/** A running bench. */
export interface Bench {
  readonly port: number;
  /** On this machine; where shared, with a secret of its own that pairs one browser. */
  readonly ownLink: () => string;
  readonly folder: string;
  readonly close: () => Promise<void>;
}

const LOOPBACK = "127.0.0.1";

/** Serves the page and a folder's car documents: to this machine only, or, shared, to paired devices. Throws where the port is taken. */
export async function startBench({ folder, app, port, share, onSecret }: BenchOptions): Promise<Bench> {
  // Filled in when the port is known; nothing is listening before.
  let listen: RequestListener | undefined;
  const handle: RequestListener = (incoming, outgoing) => listen?.(incoming, outgoing);
  const own = await listening(handle, LOOPBACK, port);
  const actual = (own.address() as AddressInfo).port;
  const servers: Server[] = [own];
  try {
    if (share !== undefined) servers.push(await listening(handle, share, actual));
    const cars = await CarFolder.open(folder, CAR_FORMS);
    const streams = new EventStreams();
    const stop = cars.subscribe((event) => streams.send(event));
    const link = (host: string, secret: string) => `http://${host}:${actual}/pair#${secret}`;
    const pairing =
      share === undefined
        ? undefined
        : new Pairing((secret) => onSecret?.(secret, { link: (shown) => link(share, shown) }));
    const run = randomBytes(8).toString("hex");
    const ready = { armwright: "bench", run, folder: cars.id, title: cars.title, shared: share !== undefined } as const;
    const names = [LOOPBACK, "localhost", ...(share === undefined ? [] : [share])];
    listen = listener({
      app,
      api: api(cars, streams, ready),
      hosts: new Set(names.map((name) => `${name}:${actual}`)),
      cookie: `armwright-${actual}`,
      pairing,
    });
    return {
      port: actual,
      folder: cars.root,
      ownLink: () => (pairing ? link(LOOPBACK, pairing.ownSecret()) : `http://${LOOPBACK}:${actual}/`),
      close: async () => {
        stop();
        streams.close();
        await Promise.all(servers.map(closed));
        await cars.close();
      },
    };
  } catch (error) {
    await Promise.all(servers.map(closed));
    throw error;
  }
}

function listening(handle: RequestListener, host: string, port: number): Promise<Server> {
  const server = createServer({ maxHeaderSize: 16_384, headersTimeout: 10_000, requestTimeout: 180_000 }, handle);
  server.maxConnections = 256;
  return new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, host, () => {
      server.off("error", reject);
      resolve(server);
    });
  });
}

function closed(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}
