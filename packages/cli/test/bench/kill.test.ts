import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { readCarDocument } from "@armwright/engine/document";
import { build } from "vite";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { CarFolder } from "../../src/bench/folder/car-folder.ts";
import { CAR_FORMS } from "../../src/bench/folder/judge-text.ts";
import { CAR_TEXT } from "./bench-under-test.ts";

/** Kills in all; ARMWRIGHT_KILLS asks for more. The default stops early where the machine is slow. */
const KILLS = Number(process.env["ARMWRIGHT_KILLS"] ?? 240);
const LONGEST = process.env["ARMWRIGHT_KILLS"] ? Number.POSITIVE_INFINITY : 45_000;
const AT_ONCE = 4;

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
let root: string;
beforeAll(async () => {
  // A killed process loses nothing that the system has taken over, so a disk in memory does, and is faster.
  root = mkdtempSync(join(existsSync("/dev/shm") ? "/dev/shm" : tmpdir(), "kill-"));
  await Promise.all(["plain", "whole"].map(script));
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

/** One script of a saver and all it needs, so that a process of it starts fast. */
const script = (forms: string) =>
  build({
    configFile: false,
    logLevel: "silent",
    resolve: { alias: { "@armwright/engine/document": here("../../../engine/src/document/index.ts") } },
    ssr: { noExternal: true },
    build: {
      ssr: here(`./${forms}-saver.ts`),
      outDir: join(root, forms),
      rollupOptions: { output: { entryFileNames: "saver.mjs" }, treeshake: { moduleSideEffects: false } },
    },
  });

interface Round {
  /** The last save that was acknowledged before the kill; -1 for none. */
  readonly acknowledged: number;
  readonly saves: number;
}

/** Starts a saver, kills it a random while after its first save, and gives what it had acknowledged. */
function round(folder: string, name: string, from: number, forms: string, random: () => number): Promise<Round> {
  return new Promise((resolve, reject) => {
    const child: ChildProcess = spawn(process.execPath, [join(root, forms, "saver.mjs"), folder, name, String(from)]);
    let said = "";
    let words = "";
    child.stdout?.on("data", (chunk) => {
      if (said === "") setTimeout(() => child.kill("SIGKILL"), random() * 25);
      said += String(chunk);
    });
    child.stderr?.on("data", (chunk) => {
      words += String(chunk);
    });
    child.on("close", (code, signal) => {
      if (signal !== "SIGKILL") return reject(new Error(`the saver ended by itself (${code}): ${words}`));
      const whole = said.split("\n").slice(0, -1);
      resolve({ acknowledged: Number(whole.at(-1)?.split(" ")[0] ?? -1), saves: whole.length });
    });
  });
}

/** A plain generator, so that a failing run can be had again by its seed (Park and Miller 1988). */
const randomFrom = (seed: number) => () => {
  seed = (seed * 48_271) % 2_147_483_647;
  return seed / 2_147_483_647;
};

describe("a server killed in the middle of saves", () => {
  const seed = (Date.now() % 2_147_483_646) + 1;
  it(`loses no acknowledged save and leaves no half-written file (seed ${seed})`, async () => {
    const folder = join(root, "cars");
    const start = performance.now();
    let kills = 0;
    let saves = 0;
    let beyond = 0;
    const worker = async (name: string, random: () => number): Promise<void> => {
      const file = join(folder, `${name}.car.json`);
      writeFileSync(file, CAR_TEXT);
      let from = 0;
      while (kills < KILLS && performance.now() - start < LONGEST) {
        const { acknowledged, saves: done } = await round(
          folder,
          name,
          from,
          kills % 12 === 0 ? "whole" : "plain",
          random,
        );
        kills += 1;
        saves += done;
        const reading = readCarDocument(readFileSync(file, "utf8"));
        if (!reading.ok) throw new Error(`half-written after ${acknowledged}: ${JSON.stringify(reading.faults)}`);
        const onDisk = Number(/Save (\d+)/.exec(reading.document.name)?.[1] ?? -1);
        // The one in hand when the kill came may be on the disk without its acknowledgement having got out.
        expect(onDisk).toBeGreaterThanOrEqual(acknowledged);
        expect(onDisk).toBeLessThanOrEqual(acknowledged + 2);
        if (onDisk > acknowledged) beyond += 1;
        // Sometimes the client asks again for what it had no answer to; the last value must be what comes out.
        from = random() < 0.5 ? acknowledged + 1 : onDisk + 1;
      }
      await checkJournal(folder, name, file, from);
    };
    mkdirSync(folder);
    await Promise.all(Array.from({ length: AT_ONCE }, (_, index) => worker(`car ${index}`, randomFrom(seed + index))));
    console.log(
      `${kills} kills, ${saves} acknowledged saves, ${beyond} on the disk before their acknowledgement got out`,
    );
    expect(kills).toBeGreaterThanOrEqual(Math.min(KILLS, 40));
    expect(saves).toBeGreaterThan(kills);
    // A new server clears what the killed ones left behind, and nothing else.
    await (await CarFolder.open(folder, CAR_FORMS)).close();
    const left = readdirSync(folder, { recursive: true }).map(String);
    expect(left.filter((name) => name.endsWith(".tmp"))).toEqual([]);
    expect(left.filter((name) => /^car \d\.car\.json$/.test(name))).toHaveLength(AT_ONCE);
  }, 120_000);
});

/** Every operation whose value was written is known as done; the next one is not. */
async function checkJournal(root: string, name: string, file: string, next: number): Promise<void> {
  const cars = await CarFolder.open(root, CAR_FORMS);
  const onDisk = Number(/Save (\d+)/.exec(readFileSync(file, "utf8"))?.[1] ?? -1);
  const operation = (count: number) => ({
    id: `saved-${String(count).padStart(8, "0")}`,
    path: "name",
    value: "again",
  });
  const applied = await cars
    .place(name)
    .apply("saver-client", [operation(onDisk), operation(Math.max(next, onDisk + 1) + 5)]);
  await cars.close();
  expect(applied).toMatchObject({ ok: true, outcomes: [{ outcome: "done before" }, { outcome: "done" }] });
}
