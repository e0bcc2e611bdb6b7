import { existsSync, readdirSync, readFileSync } from "node:fs";
import { connect } from "node:net";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { RateLimit } from "../../src/bench/http/rate-limit.ts";
import { benchUnderTest, listen, type UnderTest, until } from "./bench-under-test.ts";

let bench: UnderTest;
beforeEach(async () => {
  bench = await benchUnderTest();
});
afterEach(() => bench.end());

/** Sends a body in chunks without saying its length; gives how much had been taken when the answer came. */
function pour(path: string, method: string, most: number): Promise<{ status: number; sent: number }> {
  return new Promise((resolve, reject) => {
    const chunk = Buffer.alloc(65_536, 0x20);
    const head = `${method} ${path} HTTP/1.1\r\nHost: 127.0.0.1:${bench.port}\r\nx-armwright: 1\r\nTransfer-Encoding: chunked\r\n\r\n`;
    let sent = 0;
    let answer = "";
    const socket = connect(bench.port, "127.0.0.1", () => {
      socket.write(head);
      more();
    });
    const more = (): void => {
      if (socket.destroyed || answer !== "") return;
      if (sent >= most) {
        socket.write("0\r\n\r\n");
        return;
      }
      sent += chunk.length;
      socket.write(`${chunk.length.toString(16)}\r\n`);
      socket.write(chunk);
      socket.write("\r\n", () => setImmediate(more));
    };
    const done = () => resolve({ status: Number(/^HTTP\/1\.1 (\d+)/.exec(answer)?.[1]), sent });
    socket.on("data", (data) => {
      answer += String(data);
      socket.destroy();
    });
    socket.on("close", () => (answer === "" ? reject(new Error("closed without an answer")) : done()));
    socket.on("error", () => undefined);
  });
}

describe("sizes", () => {
  it.each([
    ["/api/cars/saltbush/operations", "POST"],
    ["/api/cars/gibber", "PUT"],
  ])("are counted while a body comes in: %s", async (path, method) => {
    const { status, sent } = await pour(path, method, 50_000_000);
    expect(status).toBe(413);
    expect(sent).toBeLessThan(20_000_000);
  });

  it("are looked at before a body comes, where it says its length", async () => {
    const answer = await bench.ask("/api/meshes/scan.stl", {
      method: "PUT",
      headers: { "x-armwright": "1", "content-length": "100000001" },
    });
    expect(answer.status).toBe(413);
  });

  it("let a mesh through and hand it out again; one that breaks off leaves nothing", async () => {
    const bytes = Buffer.alloc(3_000_000, 7);
    const put = (path: string) => bench.ask(path, { method: "PUT", headers: { "x-armwright": "1" }, body: bytes });
    expect((await put("/api/meshes/scan.stl")).status).toBe(201);
    expect((await put("/api/meshes/scan.stl")).status).toBe(409);
    expect((await put("/api/meshes/scan.exe")).status).toBe(400);
    expect((await put("/api/meshes/..%2fscan.stl")).status).toBe(400);
    expect(readFileSync(join(bench.root, "cars", "scan.stl")).equals(bytes)).toBe(true);
    expect((await bench.ask("/api/meshes")).json()).toEqual({ meshes: [{ file: "scan.stl", bytes: 3_000_000 }] });
    expect((await bench.ask("/api/meshes/scan.stl")).text).toHaveLength(3_000_000);

    const socket = connect(bench.port, "127.0.0.1");
    socket.write(
      `PUT /api/meshes/half.stl HTTP/1.1\r\nHost: 127.0.0.1:${bench.port}\r\nx-armwright: 1\r\nContent-Length: 1000\r\n\r\nhalf`,
    );
    await until("the beginning", () =>
      readdirSync(join(bench.root, "cars")).some((file) => file.startsWith(".half.stl")),
    );
    socket.destroy();
    await until("the end", () => !readdirSync(join(bench.root, "cars")).some((file) => file.startsWith(".half.stl")));
    expect(existsSync(join(bench.root, "cars", "half.stl"))).toBe(false);
  });
});

describe("rates", () => {
  it("let a burst through, then so many a second, and say how long to wait", () => {
    const limit = new RateLimit({ burst: 3, perSecond: 2 });
    expect([0, 0, 0, 0].map((at) => limit.take("a", at))).toEqual([0, 0, 0, 1]);
    expect(limit.take("b", 0)).toBe(0);
    expect(limit.take("a", 500)).toBe(0);
    expect(limit.take("a", 500)).toBe(1);
    const slow = new RateLimit({ burst: 1, perSecond: 0.1 });
    expect([slow.take("a", 0), slow.take("a", 0), slow.take("a", 5000)]).toEqual([0, 10, 5]);
    // A clock that was put back gives nothing away and locks nobody out.
    expect([slow.take("a", 11_000), slow.take("a", 0), slow.take("a", 10_000)]).toEqual([0, 10, 0]);
  });

  it("answer 429 with Retry-After to one that asks without end", async () => {
    // The clock is held: how fast this machine asks has no part in it.
    const clock = vi.spyOn(Date, "now").mockReturnValue(1_700_000_000_000);
    try {
      const ask = async (count: number) => {
        const answers = await Promise.all(Array.from({ length: count }, () => bench.ask("/api/ready")));
        return answers.filter(({ status }) => status === 429);
      };
      const refused = await ask(600);
      expect(refused).toHaveLength(600 - 400);
      for (const { headers } of refused) expect(headers["retry-after"]).toBe("1");
      clock.mockReturnValue(1_700_000_001_000);
      expect(await ask(150)).toHaveLength(150 - 100);
    } finally {
      clock.mockRestore();
    }
  });

  it("bound the open streams", async () => {
    const streams = Array.from({ length: 24 }, (_, index) => listen(bench, `client-${index}-aa`));
    await until("the streams", () => streams.every(({ heard }) => heard.length > 0));
    const answer = await bench.ask("/api/events?client=client-one-more");
    expect([answer.status, answer.headers["retry-after"]]).toEqual([429, "5"]);
    streams[0]?.stop();
    // The server learns a moment later that the first is gone: until then it refuses.
    let again = listen(bench, "client-again");
    await until("a free place", async () => {
      await new Promise((resolve) => setTimeout(resolve, 50));
      if (again.heard.length > 0) return true;
      again.stop();
      again = listen(bench, "client-again");
      return false;
    });
    for (const { stop } of [...streams, again]) stop();
  });
});
