const FIRST = 400;
const LONGEST = 10_000;

/** How long to wait before the next try: longer each time, never twice the same for all, ms. */
export class Backoff {
  #tries = 0;
  readonly #random: () => number;

  constructor(random: () => number = Math.random) {
    this.#random = random;
  }

  next(): number {
    const full = Math.min(LONGEST, FIRST * 2 ** this.#tries);
    this.#tries += 1;
    return full * (0.5 + this.#random() / 2);
  }

  reset(): void {
    this.#tries = 0;
  }
}
