/** One thing to time: runs the given number of times and gives the seconds it took. */
export interface Variant {
  readonly name: string;
  run(times: number): number | Promise<number>;
}

export const SAMPLES = 31;
/** s */
export const LEAST_SAMPLE = 0.01;
const WARM_ROUNDS = 40;
const WARM_RUNS = 25;

/** Times a plain function as a variant. */
export const timed = (name: string, action: () => void): Variant => ({
  name,
  run: (times) => {
    const start = performance.now();
    for (let i = 0; i < times; i += 1) action();
    return (performance.now() - start) / 1000;
  },
});

/**
 * Least time of each variant, seconds a run. All are sampled in turn, round after round, so that what disturbs the machine
 * disturbs all of them alike.
 */
export async function measure(variants: readonly Variant[]): Promise<ReadonlyMap<string, number>> {
  // Warm up with all of them mixed, so that none is compiled for one kind of car only.
  for (let round = 0; round < WARM_ROUNDS; round += 1) for (const variant of variants) await variant.run(WARM_RUNS);
  const plans = [];
  for (const variant of variants)
    plans.push({ variant, times: await timesFor(variant), least: Number.POSITIVE_INFINITY });
  for (let sample = 0; sample < SAMPLES; sample += 1) {
    for (const plan of plans) {
      let seconds = await plan.variant.run(plan.times);
      while (seconds < LEAST_SAMPLE) {
        plan.times *= 2;
        seconds = await plan.variant.run(plan.times);
      }
      plan.least = Math.min(plan.least, seconds / plan.times);
    }
  }
  return new Map(plans.map(({ variant, least }) => [variant.name, least]));
}

/** How many runs make a sample that is long enough, found by doubling. */
async function timesFor(variant: Variant): Promise<number> {
  let times = 1;
  while ((await variant.run(times)) < 1.2 * LEAST_SAMPLE) times *= 2;
  return times;
}
