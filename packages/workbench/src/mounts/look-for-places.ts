import { type Car, countCandidates, type MountRequest, quickRequest, type Study } from "@armwright/engine";
import { newestWins } from "../jobs/newest-wins.ts";
import { jobsAtOnce, runJob } from "../jobs/run-job.ts";
import { bench } from "../store/bench.ts";
import type { Judgement } from "./judge-job.ts";
import { mountsBench } from "./mounts-store.ts";
import { requestNow } from "./request-now.ts";
import { counted } from "./words.ts";

const { getState: now, setState: set } = mountsBench;

/** More than this is not looked through while somebody waits; a coarser grid or smaller zones are asked for. */
const MOST_CANDIDATES = 200_000_000;

const lane = newestWins();
let isBusy = false;
let isAskedAgain = false;

/** Looks on a coarse grid: at once, or as soon as the last coarse look has answered, so that answers keep coming. */
export function lookCoarsely(): void {
  if (isBusy) {
    isAskedAgain = true;
    return;
  }
  isBusy = true;
  void search("coarse").finally(() => {
    isBusy = false;
    const again = isAskedAgain;
    isAskedAgain = false;
    if (again && now().isOpen) lookCoarsely();
  });
}

/** Looks on the whole grid; gives up whatever was looked for before. Where nothing fits, for the smallest change as well. */
export async function lookClosely(): Promise<void> {
  isAskedAgain = false;
  await search("whole");
}

export function stopLooking(): void {
  isAskedAgain = false;
  lane.giveUp();
  set({ running: null });
}

async function search(what: "coarse" | "whole"): Promise<void> {
  const { study, isOlder } = bench.getState().live;
  if (!study || isOlder || !now().isOpen) return;
  const asked = requestNow(study, now());
  const signal = lane.begin();
  if (!asked) {
    set({
      running: null,
      found: null,
      openings: null,
      trouble: "Choose a shock first: the car's own, or one of a shelf.",
    });
    return;
  }
  const request = requestFor(what, study, asked);
  if (typeof request === "string") {
    set({ running: null, found: null, openings: null, trouble: plainly(request) });
    return;
  }
  set({ running: { what, done: 0 }, ...(what === "whole" && { openings: null }) });
  performance.mark("armwright-mounts-asked");
  const outcome = await searched(study.car, request, what, signal);
  if (!lane.isNewest(signal)) return;
  if (!outcome.ok) {
    if (outcome.why === "failed") set({ running: null, found: null, trouble: plainly(outcome.words) });
    return;
  }
  const found = outcome.answer;
  performance.measure(`armwright-mounts-${what}`, "armwright-mounts-asked");
  set(({ looked }) => ({
    running: null,
    found,
    isCoarse: what === "coarse",
    trouble: "",
    ...(what === "whole" && { looked: Math.min(looked, Math.max(0, found.best.length - 1)) }),
  }));
  if (what === "whole" && found.fitting === 0) await lookForOpenings(study.car, request, signal);
}

/** While the hand moves, a grid that answers at once. What cannot be asked is told in words. */
function requestFor(what: "coarse" | "whole", { corner }: Study, asked: MountRequest): MountRequest | string {
  try {
    if (what === "coarse") return quickRequest(corner, asked);
    const count = countCandidates(corner, asked);
    if (count <= MOST_CANDIDATES) return asked;
    return `that is ${counted(count)} places: make the zones smaller, or try places farther apart`;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

/** A share for each worker, then the judging of what they found in one of them. */
async function searched(car: Car, request: MountRequest, what: "coarse" | "whole", signal: AbortSignal) {
  // While the hand moves one core is left to the page, so that the drawing follows the hand.
  const parts = what === "coarse" ? Math.max(1, jobsAtOnce() - 1) : jobsAtOnce();
  const done = new Array<number>(parts).fill(0);
  const scans = await Promise.all(
    done.map((_, part) => {
      const onProgress = (share: number): void => {
        done[part] = share;
        if (what === "whole" && lane.isNewest(signal))
          set({ running: { what, done: done.reduce((sum, each) => sum + each, 0) / parts } });
      };
      return runJob("mounts-scan", { car, request, part, parts }, { signal, onProgress });
    }),
  );
  const failed = scans.find((scan) => !scan.ok);
  if (failed && !failed.ok) return failed;
  const found = scans.flatMap((scan) => (scan.ok ? [scan.answer] : []));
  return runJob("mounts-judge", { car, request, parts: found }, { signal });
}

async function lookForOpenings(car: Car, request: MountRequest, signal: AbortSignal): Promise<void> {
  set({ running: { what: "openings", done: 0 } });
  const outcome = await runJob("mounts-open", { car, request }, { signal });
  if (!lane.isNewest(signal)) return;
  if (outcome.ok) set({ running: null, openings: outcome.answer });
  else if (outcome.why === "failed") set({ running: null, trouble: plainly(outcome.words) });
}

/** What the engine refuses, as a sentence. */
const plainly = (words: string): string => `${words.slice(0, 1).toUpperCase()}${words.slice(1).replace(/\.$/, "")}.`;

export type { Judgement };
