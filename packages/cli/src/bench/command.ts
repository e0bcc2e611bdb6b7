import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import QRCode from "qrcode";
import { EXIT, type Io } from "../io.ts";
import { Refusal } from "../refusal.ts";
import { isPrivate, localAddresses } from "./addresses.ts";
import { type Bench, startBench } from "./start-bench.ts";
import { workingFolder } from "./working-folder.ts";

/** The command's words, taken apart: FOLDER; --port N, --address A; --share, --no-open. */
export interface BenchWords {
  readonly operands: readonly string[];
  readonly flags: ReadonlySet<string>;
  readonly values: ReadonlyMap<string, string>;
}

/** What tests put in place of the world. */
export interface BenchSetting {
  readonly stop?: AbortSignal;
  readonly here?: string;
  readonly app?: string;
}

/** Where the bench is looked for first, and how many ports after it are tried. */
const USUAL_PORT = 4180;
const TRIED = 20;

/** Serves the page and a folder's cars until it is stopped (Ctrl-C, or `stop`). Throws Refusal. */
export async function benchCommand(
  words: BenchWords,
  io: Pick<Io, "out">,
  { stop = stopSignal(), here = process.cwd(), app = builtPage() }: BenchSetting = {},
): Promise<number> {
  const share = words.flags.has("share") ? shareAddress(words.values.get("address")) : undefined;
  const { path, copied } = await workingFolder(words.operands[0], here);
  if (copied.length > 0) io.out(`Made ${path} with copies of ${copied.length} examples.\n`);
  const onSecret = (secret: string, { link }: { readonly link: (secret: string) => string }): void => {
    void invitation(link(secret), secret).then((text) => io.out(text));
  };
  const bench = await started(words.values.get("port"), (port) =>
    startBench({ folder: path, app, port, onSecret, ...(share === undefined ? {} : { share }) }),
  );
  const link = bench.ownLink();
  io.out(`The bench is open: ${link}\nCars: ${bench.folder}\nStop it with Ctrl-C.\n`);
  if (!words.flags.has("no-open") && process.stdout.isTTY) openBrowser(link);
  if (!stop.aborted) await new Promise((resolve) => stop.addEventListener("abort", resolve, { once: true }));
  await bench.close();
  return EXIT.sound;
}

async function started(typed: string | undefined, start: (port: number) => Promise<Bench>): Promise<Bench> {
  const first = typed === undefined ? USUAL_PORT : Number(typed);
  if (!Number.isInteger(first) || first < 0 || first > 65_535) {
    throw new Refusal(`--port needs a whole number up to 65535, found ${typed}.`);
  }
  const last = typed === undefined ? first + TRIED : first;
  for (let port = first; ; port++) {
    try {
      return await start(port);
    } catch (error) {
      const code = error instanceof Error && "code" in error ? error.code : undefined;
      if (code === "EACCES") throw new Refusal(`Port ${port} is not open to you: take one above 1023.`);
      if (code === "EADDRNOTAVAIL") throw new Refusal("This machine does not have that address in its network.");
      if (code !== "EADDRINUSE") throw error;
      if (port === last) throw new Refusal(`Port ${port} is in use: name another with --port, or leave --port out.`);
    }
  }
}

/** Where the built page lies. Throws Refusal where it is not built. */
function builtPage(): string {
  const root = dirname(createRequire(import.meta.url).resolve("@armwright/workbench/package.json"));
  const app = join(root, "dist", "app");
  if (existsSync(join(app, "index.html"))) return app;
  throw new Refusal("The page is not built yet. In Armwright's folder run: npm run build");
}

function shareAddress(named: string | undefined): string {
  if (named !== undefined && !isPrivate(named)) {
    throw new Refusal(
      `${named} is not an address of a local network, such as 192.168.1.20: sharing further is not offered.`,
    );
  }
  const address = named ?? localAddresses()[0];
  if (address === undefined) {
    throw new Refusal("This machine is in no local network: join the one your phone is in, then share again.");
  }
  return address;
}

async function invitation(link: string, secret: string): Promise<string> {
  const code = await QRCode.toString(link, { type: "utf8", errorCorrectionLevel: "L" });
  const address = link.slice(0, link.indexOf("/pair"));
  return `\n${code}\nOn a phone in the same network scan this, or open ${address} and type ${secret}\nIt pairs one device; the next one gets a new code.\n\n`;
}

function openBrowser(link: string): void {
  const [program, ...words] =
    process.platform === "darwin"
      ? ["open", link]
      : process.platform === "win32"
        ? ["rundll32", "url.dll,FileProtocolHandler", link]
        : ["xdg-open", link];
  const child = spawn(program ?? "", words, { stdio: "ignore", detached: true });
  // No browser to be found: the address is on the screen.
  child.on("error", () => undefined);
  child.unref();
}

function stopSignal(): AbortSignal {
  const stop = new AbortController();
  for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => stop.abort());
  return stop.signal;
}
