import { gapTo, hitBy, type MeshTree, makeMeshTree } from "./mesh-gap.ts";
import type { Answer, Question } from "./protocol.ts";
import { MeshFault, readMesh } from "./read-mesh.ts";

// Reads a mesh, keeps its tree, and answers how near parts of the car come to it.

let tree: MeshTree | null = null;
/** For each part the triangle that was nearest last: the next position's is most often beside it. */
let lastNearest: number[] = [];

const post = (answer: Answer, moved: Transferable[] = []): void => {
  (self as unknown as { postMessage(message: Answer, moved: Transferable[]): void }).postMessage(answer, moved);
};

self.addEventListener("message", (event: MessageEvent<Question>) => {
  answer(event.data).catch((error: unknown) => {
    const why = error instanceof MeshFault ? error.message : `bug in armwright: ${String(error)}`;
    post({ id: event.data.id, ok: false, why });
  });
});

async function answer(question: Question): Promise<void> {
  const { id } = question;
  switch (question.ask) {
    case "read": {
      const started = performance.now();
      const { position, index, triangles, dropped } = await readMesh(question.name, question.bytes);
      const read = performance.now();
      tree = makeMeshTree(position, index);
      lastNearest = [];
      const built = performance.now();
      tree.geometry.computeBoundingBox();
      const { min, max } = tree.geometry.boundingBox!;
      // The page draws from copies: it may let go of them while the tree goes on.
      const copies = { position: position.slice(), index: index.slice() };
      post(
        {
          id,
          ok: true,
          read: {
            ...copies,
            triangles,
            dropped,
            low: { x: min.x, y: min.y, z: min.z },
            high: { x: max.x, y: max.y, z: max.z },
            readTime: read - started,
            buildTime: built - read,
          },
        },
        [copies.position.buffer, copies.index.buffer],
      );
      return;
    }
    case "gaps": {
      const started = performance.now();
      const { placement, positions, most } = question;
      const mesh = known();
      const gaps = positions.map((solids) =>
        solids.map((solid, part) => {
          const gap = gapTo(mesh, placement, solid, most, lastNearest[part] ?? -1);
          lastNearest[part] = gap?.triangle ?? -1;
          return gap;
        }),
      );
      post({ id, ok: true, gaps, took: performance.now() - started });
      return;
    }
    case "ray":
      post({ id, ok: true, hit: hitBy(known(), question.placement, question.origin, question.direction) });
  }
}

function known(): MeshTree {
  if (!tree) throw new MeshFault("No mesh has been read yet.");
  return tree;
}
