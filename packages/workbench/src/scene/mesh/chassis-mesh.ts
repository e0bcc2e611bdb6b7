import type { Vec3 } from "@armwright/engine";
import type { MeshGap, MeshSolid } from "./mesh-gap.ts";
import type { Answer, MeshHit, MeshRead, Question } from "./protocol.ts";
import type { Similarity } from "./similarity.ts";

/** A chassis mesh that has been read; its tree lives in a worker, so that nothing here ever waits for it. */
export interface ChassisMesh {
  readonly read: MeshRead;
  /**
   * Gaps of parts to the mesh at each of some positions of the wheel; null where none is nearer than `most` (m). What was
   * asked before and not yet answered is still answered, in order.
   */
  gaps(placement: Similarity, positions: readonly (readonly MeshSolid[])[], most: number): Promise<MeshGaps>;
  /** Where a ray (vehicle axes) first meets the mesh. */
  hit(placement: Similarity, origin: Vec3, direction: Vec3): Promise<MeshHit | null>;
  /** Ends the worker and with it the tree's memory. */
  dispose(): void;
}

export interface MeshGaps {
  readonly gaps: readonly (readonly (MeshGap | null)[])[];
  /** ms in the worker. */
  readonly took: number;
}

/** Reads a mesh file in a worker of its own. Rejects with an Error whose message says in plain words what is wrong. */
export async function readChassisMesh(name: string, bytes: ArrayBuffer): Promise<ChassisMesh> {
  const worker = new Worker(new URL("./mesh.worker.ts", import.meta.url), { type: "module" });
  const waiting = new Map<number, { resolve(answer: Answer): void; reject(error: Error): void }>();
  let count = 0;
  worker.addEventListener("message", (event: MessageEvent<Answer>) => {
    waiting.get(event.data.id)?.resolve(event.data);
    waiting.delete(event.data.id);
  });
  const failAll = (why: string): void => {
    for (const { reject } of waiting.values()) reject(new Error(why));
    waiting.clear();
  };
  worker.addEventListener("error", () =>
    failAll("The mesh could not be worked on; there may not be enough memory for it."),
  );
  const ask = (question: Question, moved: Transferable[] = []): Promise<Answer> =>
    new Promise((resolve, reject) => {
      waiting.set(question.id, { resolve, reject });
      worker.postMessage(question, moved);
    });
  const next = (): number => {
    count += 1;
    return count;
  };
  const first = await ask({ ask: "read", id: next(), name, bytes }, [bytes]);
  if (!first.ok || !("read" in first)) {
    worker.terminate();
    throw new Error(first.ok ? "bug in armwright: no mesh came back" : first.why);
  }
  return {
    read: first.read,
    async gaps(placement, positions, most) {
      const found = await ask({ ask: "gaps", id: next(), placement, positions, most });
      if (found.ok && "gaps" in found) return found;
      throw new Error(found.ok ? "bug in armwright: no gaps came back" : found.why);
    },
    async hit(placement, origin, direction) {
      const found = await ask({ ask: "ray", id: next(), placement, origin, direction });
      if (found.ok && "hit" in found) return found.hit;
      throw new Error(found.ok ? "bug in armwright: no hit came back" : found.why);
    },
    dispose() {
      worker.terminate();
      failAll("The mesh was put away.");
    },
  };
}
