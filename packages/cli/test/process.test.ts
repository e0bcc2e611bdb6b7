import { spawn, spawnSync } from "node:child_process";
import { closeSync, mkdtempSync, openSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { unprotected } from "./documents.ts";

// The real program as built (`npm test` builds first): what a fake world cannot show.
const BIN = fileURLToPath(new URL("../bin/armwright.js", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "armwright-"));
const car = join(folder, "my.car.json");
const armwright = (words: readonly string[], input = "") =>
  spawnSync(process.execPath, [BIN, ...words], { input, encoding: "utf8", cwd: folder });

beforeAll(() => writeFileSync(car, unprotected()));
afterAll(() => rmSync(folder, { recursive: true }));

describe("the program", () => {
  it("reads a file, prints plainly into a pipe, and ends with the documented codes", () => {
    const { status, stdout, stderr } = armwright(["study", "my.car.json"]);
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    expect(stdout).toContain("NOT PROTECTED");
    expect(stdout).not.toContain("\u001b");
    expect(armwright(["check", "my.car.json"]).status).toBe(1);
    const absent = armwright(["check", "absent"]);
    expect(absent.status).toBe(2);
    expect(absent.stderr).toBe("absent cannot be read: there is no such file or folder.\n");
  });

  it("takes from a pipe what it gave to one", () => {
    const made = armwright(["new", "--kind", "five-link", "--units", "metric"]).stdout;
    const { status, stdout } = armwright(["study", "-", "--json"], made);
    expect(status).toBe(0);
    expect(JSON.parse(stdout).car.kind).toBe("five-link");
  });

  it.runIf(process.platform === "linux")("says in one sentence that its output cannot be written", () => {
    const full = openSync("/dev/full", "w");
    const { status, stderr } = spawnSync(process.execPath, [BIN, "study", car], {
      encoding: "utf8",
      stdio: ["ignore", full, "pipe"],
    });
    closeSync(full);
    expect({ status, stderr }).toEqual({ status: 2, stderr: "The output cannot be written: the disk is full.\n" });
  });

  it("is quiet where its reader leaves", async () => {
    const child = spawn(process.execPath, [BIN, "study", car, "--json", "--stations", "401"]);
    let errors = "";
    child.stderr.on("data", (data) => (errors += data));
    child.stdout.once("data", () => child.stdout.destroy());
    const code = await new Promise((resolve) => child.on("close", resolve));
    expect({ code, errors }).toEqual({ code: 0, errors: "" });
  });
});
