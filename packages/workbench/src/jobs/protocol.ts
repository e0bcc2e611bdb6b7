// What page and worker say to one another. Every job has a number; all that is said of it carries the same.

export type ToWorker =
  | { readonly say: "do"; readonly id: number; readonly name: string; readonly input: unknown }
  | { readonly say: "give up"; readonly id: number };

export type FromWorker =
  | { readonly say: "progress"; readonly id: number; readonly progress: unknown }
  | { readonly say: "done"; readonly id: number; readonly answer: unknown }
  | { readonly say: "given up"; readonly id: number }
  | { readonly say: "failed"; readonly id: number; readonly words: string };
