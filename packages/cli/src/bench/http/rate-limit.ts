/** So many at once, and so many a second after that. */
export interface Rate {
  readonly burst: number;
  readonly perSecond: number;
}

interface Bucket {
  left: number;
  at: number;
}

const MOST_KEYS = 1000;

/** Counts what each key (an address) takes; says how long one that took too much has to wait. */
export class RateLimit {
  readonly #rate: Rate;
  readonly #buckets = new Map<string, Bucket>();

  constructor(rate: Rate) {
    this.#rate = rate;
  }

  /** Takes one. 0 where it may go on, else whole seconds to wait. `now` in ms. */
  take(key: string, now: number): number {
    const { burst, perSecond } = this.#rate;
    const bucket = this.#buckets.get(key) ?? { left: burst, at: now };
    bucket.left = Math.min(burst, bucket.left + (Math.max(0, now - bucket.at) / 1000) * perSecond);
    bucket.at = now;
    this.#buckets.delete(key);
    this.#buckets.set(key, bucket);
    if (this.#buckets.size > MOST_KEYS) this.#buckets.delete(this.#buckets.keys().next().value ?? "");
    if (bucket.left < 1) return Math.max(1, Math.ceil((1 - bucket.left) / perSecond));
    bucket.left -= 1;
    return 0;
  }
}
