import { existsSync, readFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join } from "node:path";
import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { enter, field, isKeptOffline, ready, shows, takenOut, type Workshop, workshop } from "./bench-in-browser.ts";
import { engineNumbers, shownNumbers, shownStops, studyOf } from "./shown-numbers.ts";

const SALTBUSH = readFileSync(new URL("../../../../examples/saltbush.car.json", import.meta.url), "utf8");
const GREASEWOOD = readFileSync(new URL("../../../../examples/greasewood.car.json", import.meta.url), "utf8");

let shop: Workshop;
let site: Site;
beforeAll(async () => {
  shop = await workshop();
});
afterEach(() => site?.close());
afterAll(() => shop?.close());

test("on a plain site the page works, keeps cars over a reload, and goes on without any network", async () => {
  site = await staticSite(shop.app);
  const { page, troubles } = await shop.visit(site.address, { serviceWorkers: "allow" });
  await ready(page);
  expect(await page.title()).toBe("Saltbush, Armwright");
  expect((await shownNumbers(page)).stops).toEqual(engineNumbers(studyOf(SALTBUSH)).stops);
  await isKeptOffline(page);
  expect(site.strangers()).toEqual([]);
  // Asked whether a bench serves the page; the site has none, and says so.
  expect(troubles.filter((trouble) => !trouble.includes("404"))).toEqual([]);
  await page.locator("nav.order button", { hasText: "Travel" }).click();
  await enter(page, "strap.length", "23");

  site.cut();
  await page.reload();
  await ready(page);
  await shows(page, "strap.length", "23");
  await enter(page, "bumpStop.reach", "4 1/2");
  const out = await takenOut(page);
  const changed = JSON.parse(SALTBUSH);
  changed.strap.length = 23;
  changed.bumpStop.reach = "4 1/2";
  expect(JSON.parse(out)).toEqual(changed);
  expect(await shownStops(page)).toEqual(engineNumbers(studyOf(out)).stops);

  // Another car comes in from a file, and the first one is still there.
  await page.locator(".bench-foot").getByRole("button", { name: "Cars" }).click();
  const chooser = page.locator('input[type="file"]');
  const broken = { name: "note.json", mimeType: "application/json", buffer: Buffer.from("{ not a car") };
  await chooser.setInputFiles(broken);
  await page.locator(".panel [role=alert]", { hasText: /\w/ }).waitFor();
  const whole = { name: "greasewood.car.json", mimeType: "application/json", buffer: Buffer.from(GREASEWOOD) };
  await chooser.setInputFiles(whole);
  await page.getByRole("heading", { name: JSON.parse(GREASEWOOD).name }).waitFor();
  expect(await takenOut(page)).toBe(GREASEWOOD);
  await page.reload();
  await page.getByRole("heading", { name: JSON.parse(GREASEWOOD).name }).waitFor();
  await page.locator(".bench-foot").getByRole("button", { name: "Cars" }).click();
  await page.getByRole("button", { name: "Saltbush saltbush" }).click();
  await page.getByRole("heading", { name: "Saltbush" }).waitFor();
  expect(await field(page, "strap.length").inputValue()).toBe("23");
  expect(await takenOut(page)).toBe(out);
  await page.context().close();
});

interface Site {
  readonly address: string;
  /** From now on nothing is answered. */
  readonly cut: () => void;
  /** What was asked for that the site does not have, besides whether it is a bench. */
  readonly strangers: () => readonly string[];
  readonly close: () => void;
}

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".woff2": "font/woff2",
  ".webmanifest": "application/manifest+json",
};

/** A server that knows nothing but the built page's files, in a folder of their own as such sites have it. */
async function staticSite(app: string): Promise<Site> {
  const strangers: string[] = [];
  const server: Server = createServer((asked, answer) => {
    const path = new URL(asked.url ?? "", "http://site").pathname;
    const file = join(app, path.replace(/^\/shop\//, "") || "index.html");
    if (path.startsWith("/shop/") && existsSync(file)) {
      answer.writeHead(200, {
        "content-type": TYPES[extname(file)] ?? "application/octet-stream",
        "content-security-policy": "default-src 'self'; img-src 'self' data: blob:; object-src 'none'",
      });
      answer.end(readFileSync(file));
      return;
    }
    if (!/^\/shop\/api\/(?:ready|first)$/.test(path)) strangers.push(path);
    answer.writeHead(404).end();
  });
  await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
  const close = (): void => {
    server.close();
    server.closeAllConnections();
  };
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/shop/`,
    cut: close,
    strangers: () => strangers,
    close,
  };
}
