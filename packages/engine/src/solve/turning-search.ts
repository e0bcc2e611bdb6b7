/** A place and what was found there. */
export interface Least {
  readonly at: readonly number[];
  readonly value: number;
}

const MOST_POLLS = 4000;

/**
 * Goes down from a start within the unit box: looks a step away in a set of directions square to each other, forward and
 * back, doubles the step after a gain and halves it after none. The set is turned anew at each look, so that in time every
 * direction is tried and a kinked valley, along which fixed directions would get stuck, is followed too: mesh adaptive
 * direct search (Audet and Dennis, SIAM J. Optim. 17, 2006), with turns by the golden angle in place of drawn ones.
 */
export function lowerByTurning(
  f: (u: readonly number[]) => number,
  start: Least,
  firstStep: number,
  finest: number,
): Least {
  let { at, value } = start;
  let step = firstStep;
  let idle = 0;
  const directions = at.length;
  for (let poll = 0; poll < MOST_POLLS && step > finest; poll += 1) {
    const before = at;
    for (const direction of turned(directions, poll)) {
      for (const sign of [1, -1]) {
        const next = before.map((share, i) => clampShare(share + sign * step * direction[i]!));
        const there = f(next);
        if (there < value) {
          at = next;
          value = there;
        }
      }
    }
    if (at !== before) {
      // The same way again as long as it goes down.
      const way = at.map((share, i) => share - before[i]!);
      for (let stride = 1; ; stride *= 2) {
        const next = at.map((share, i) => clampShare(share + stride * way[i]!));
        const there = f(next);
        if (!(there < value)) break;
        at = next;
        value = there;
      }
      step = Math.min(firstStep, step * 2);
      idle = 0;
      continue;
    }
    idle += 1;
    if (idle < IDLE_POLLS[directions - 1]!) continue;
    step /= 2;
    idle = 0;
  }
  return { at, value };
}

export const clampShare = (share: number): number => Math.min(1, Math.max(0, share));

/** Looks without a gain before the step is halved. */
const IDLE_POLLS = [1, 5, 8] as const;
const GOLDEN_ANGLE = Math.PI * (3 - Math.sqrt(5));

/** Unit vectors square to each other; the first look is along the box's own directions. */
function turned(directions: number, poll: number): readonly (readonly number[])[] {
  if (directions === 1) return [[1]];
  const a = poll * GOLDEN_ANGLE;
  const plane = [
    [Math.cos(a), Math.sin(a)],
    [-Math.sin(a), Math.cos(a)],
  ] as const;
  if (directions === 2) return plane;
  // Householder's mirror about a direction that runs over the half sphere (Fibonacci spiral) keeps them square.
  const z = poll === 0 ? 1 : ((poll * 0.754877666) % 1) * 2 - 1;
  const r = Math.sqrt(1 - z * z);
  const n = [r * Math.cos(a), r * Math.sin(a), z];
  return [0, 1, 2].map((row) => [0, 1, 2].map((column) => (row === column ? 1 : 0) - 2 * n[row]! * n[column]!));
}
