import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { isPrivate } from "../../src/bench/addresses.ts";
import { type Answer, benchUnderTest, freshId, type UnderTest } from "./bench-under-test.ts";

/** A second address of the loopback network stands for the local network's. */
const SHARE = process.platform === "linux" ? "127.0.0.2" : "127.0.0.1";

let bench: UnderTest;
let secrets: string[];
beforeEach(async () => {
  secrets = [];
  bench = await benchUnderTest({ share: SHARE, onSecret: (secret) => secrets.push(secret) });
});
afterEach(() => bench.end());

const pair = (secret: string, headers: Record<string, string> = {}) =>
  bench.ask("/pair", {
    method: "POST",
    headers: { "content-type": "application/x-www-form-urlencoded", ...headers },
    body: `secret=${encodeURIComponent(secret)}`,
  });
const cookieFrom = (answer: Answer) => answer.headers["set-cookie"]?.[0]?.split(";")[0] ?? "";

describe.skipIf(process.platform !== "linux")("a shared bench", () => {
  it.each([
    ["/", 401],
    ["/index.html", 401],
    ["/assets/main-abc.js", 401],
    ["/api/ready", 401],
    ["/api/cars", 401],
    ["/api/cars/saltbush", 401],
    ["/api/events?client=client-aa", 401],
    ["/api/meshes", 401],
    ["/api/cars/saltbush/book", 401],
    ["/api/cars/saltbush/book/sheets/car", 401],
    ["/api/cars/saltbush/book/files/new-h-arm-car-book.pdf", 401],
    ["/api/cars/saltbush/book/printed/7307-A384-9E02", 401],
    ["/nothing", 401],
  ])("answers nothing before pairing: %s", async (path, status) => {
    for (const cookie of [undefined, `armwright-${bench.port}=`, `armwright-${bench.port}=${"a".repeat(43)}`]) {
      const answer = await bench.ask(path, cookie === undefined ? {} : { headers: { cookie } });
      expect(answer.status).toBe(status);
      expect(answer.text).not.toContain("<title>page");
      expect(answer.text).not.toContain("saltbush");
    }
  });

  it("takes no edit before pairing", async () => {
    const before = bench.onDisk();
    expect((await bench.edit("client-aa", [{ id: freshId(), path: "name", value: "x" }])).status).toBe(401);
    expect(bench.onDisk()).toBe(before);
  });

  it("pairs one device with a secret, once, and shows a new one", async () => {
    const [first = ""] = secrets;
    expect(first).toMatch(/^[A-Z2-9]{4}(-[A-Z2-9]{4}){3}$/);
    const answer = await pair(first.toLowerCase().replaceAll("-", " "));
    expect(answer.status).toBe(303);
    expect(answer.headers["set-cookie"]?.[0]).toMatch(/^armwright-\d+=[\w-]{43}; HttpOnly; SameSite=Strict; Path=\//);
    const cookie = cookieFrom(answer);
    expect((await bench.ask("/", { headers: { cookie } })).text).toContain("<title>page");
    expect((await bench.ask("/api/cars", { headers: { cookie } })).status).toBe(200);
    expect((await bench.ask("/api/cars", { headers: { cookie: `other=1; ${cookie}; x=y` } })).status).toBe(200);
    expect((await pair(first)).status).toBe(403);
    expect(secrets).toHaveLength(2);
    expect((await pair(secrets[1] ?? "")).status).toBe(303);
  });

  it("gives this machine's browser a secret of its own, and leaves the shown one", async () => {
    const own = bench.ownLink().split("#")[1] ?? "";
    expect((await pair(own)).status).toBe(303);
    expect(secrets).toHaveLength(1);
    expect((await pair(secrets[0] ?? "")).status).toBe(303);
  });

  it("is not paired from another site, nor by guessing", async () => {
    const [secret = ""] = secrets;
    expect((await pair(secret, { origin: "http://evil.example" })).status).toBe(403);
    expect((await pair(secret, { origin: "null" })).status).toBe(403);
    expect((await pair(secret, { "sec-fetch-site": "cross-site" })).status).toBe(403);
    const tries = await Promise.all(Array.from({ length: 15 }, (_, index) => pair(`AAAA-AAAA-AAAA-AA${index}`)));
    expect(tries.filter(({ status }) => status === 429).length).toBeGreaterThanOrEqual(5);
    expect(tries.filter(({ status }) => status === 303)).toEqual([]);
  });

  it("keeps the secret out of what a page sends on, and works without script", async () => {
    const page = await bench.ask("/pair");
    expect(page.text).toContain('<form method="post" action="/pair">');
    expect(page.text).not.toMatch(/<script>|\sstyle=|\son\w+=/);
    expect(page.headers["content-security-policy"]).toContain("script-src 'self';");
    expect((await bench.ask("/pair.js")).headers["content-type"]).toContain("javascript");
    expect(bench.ownLink()).toMatch(/\/pair#[A-Z2-9-]+$/);
  });

  it("answers to its two addresses and to no other name", async () => {
    const host = (name: string) => bench.ask("/pair", { host: `${name}:${bench.port}` });
    expect((await host(SHARE)).status).toBe(200);
    expect((await host("127.0.0.3")).status).toBe(421);
    expect((await host("evil.example")).status).toBe(421);
  });
});

it("takes only addresses of a local network for sharing", () => {
  const yes = ["10.1.2.3", "172.16.0.1", "172.31.255.1", "192.168.1.20", "169.254.7.7"];
  const no = ["8.8.8.8", "172.32.0.1", "192.169.1.1", "0.0.0.0", "", "10.1.2", "10.1.2.300", "localhost", "::1"];
  expect(yes.filter((address) => !isPrivate(address))).toEqual([]);
  expect(no.filter(isPrivate)).toEqual([]);
});
