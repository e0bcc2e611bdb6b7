import type { Job } from "./job.ts";
import type { FromWorker, ToWorker } from "./protocol.ts";

/** Ways to a job by its name, as the catalogue holds them. */
export type Catalogue = Readonly<Record<string, () => Promise<Job<never, unknown, unknown>>>>;

/** The worker's side: does what it is told, one job after another, and answers by `post`. */
export function makePerformer(
  jobs: Catalogue,
  post: (message: FromWorker, moved: Transferable[]) => void,
): (message: ToWorker) => Promise<void> {
  const givenUp = new Set<number>();
  const perform = async (message: Extract<ToWorker, { say: "do" }>): Promise<void> => {
    const { id, name, input } = message;
    const say = (words: FromWorker): void => post(words, []);
    try {
      const job = await jobs[name]?.();
      if (!job) throw new Error(`bug in the page: there is no job called ${name}`);
      const answer = await job(input as never, {
        tell: (progress) => say({ say: "progress", id, progress }),
        pause: async () => {
          await othersTurn();
          if (givenUp.has(id)) throw new GivenUp();
        },
      });
      post({ say: "done", id, answer }, movable(answer));
    } catch (error) {
      if (error instanceof GivenUp) say({ say: "given up", id });
      else say({ say: "failed", id, words: error instanceof Error ? error.message : String(error) });
    }
    givenUp.delete(id);
  };
  return async (message) => {
    if (message.say === "do") await perform(message);
    else givenUp.add(message.id);
  };
}

/** Thrown through a job that has been given up. */
class GivenUp extends Error {}

/** Messages that have come in are heard before it goes on; a timer would wait four milliseconds. */
function othersTurn(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}

/** Buffers of the lists that an answer holds at its top or one deeper: moved to the page, not copied. */
function movable(answer: unknown): Transferable[] {
  const found = new Set<ArrayBuffer>();
  const look = (value: unknown, depth: number): void => {
    if (ArrayBuffer.isView(value)) {
      if (value.buffer instanceof ArrayBuffer) found.add(value.buffer);
    } else if (typeof value === "object" && value !== null && depth > 0)
      for (const each of Object.values(value)) look(each, depth - 1);
  };
  look(answer, 2);
  return [...found];
}
