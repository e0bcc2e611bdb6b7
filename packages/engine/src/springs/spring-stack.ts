import type { Spring, SpringSet } from "../car/car.ts";

export type SpringName = "main" | "tender";

/** Springs on a shock, made ready: force, rate and energy in closed form over the shock's whole length. */
export interface SpringStack {
  /** Shock length fully open, m. */
  readonly longest: number;
  readonly preload: number;
  readonly members: readonly StackMember[];
  /** Stretches of constant rate in order of compression; the last one is solid. */
  readonly stretches: readonly Stretch[];
  /** Where the main spring goes on alone, and why; null where it never does. */
  readonly crossover: Crossover | null;
}

export interface StackMember {
  readonly name: SpringName;
  readonly spring: Spring;
  /** Compression beyond which it does not go: solid, or its slider at the stop, m. */
  readonly most: number;
}

export interface Crossover {
  /** m; may lie beyond what the shock can do. */
  readonly shockLength: number;
  readonly force: number;
  readonly by: "stop" | "tender-solid";
}

interface Stretch {
  /** Compression of the whole stack at which it begins, m. */
  readonly from: number;
  /** N and J there. */
  readonly force: number;
  readonly energy: number;
  /** N/m over the stretch; 0 for the solid one, beyond which there is no number. */
  readonly rate: number;
}

/** What the springs do at one shock length. Force is positive in compression. */
export interface StackState {
  readonly force: number;
  /** dF/d(compression), N/m. */
  readonly rate: number;
  /** J stored since free. */
  readonly energy: number;
  /** Gap between the springs and their seats, m; 0 where they are held. */
  readonly loose: number;
  /** Everything that can be squeezed is: the force is then the least it can be. */
  readonly isSolid: boolean;
  readonly members: readonly MemberState[];
}

export interface MemberState {
  readonly name: SpringName;
  readonly compression: number;
  /** Its length now, m. */
  readonly length: number;
  /** Before coil lies on coil, m. */
  readonly leftToSolid: number;
}

/**
 * Two springs in series carry one force F, and each gives way F/k until it can no more: 1/k = 1/k1 + 1/k2 before, the
 * other's rate alone after (statics of springs in series). Stack compression c = preload + longest − shock length, m.
 */
export function makeSpringStack(springs: SpringSet, longest: number): SpringStack {
  const { main, tender, preload, crossoverAt } = springs;
  const members: StackMember[] = [{ name: "main", spring: main, most: main.freeLength - main.solidLength }];
  let by: Crossover["by"] = "tender-solid";
  if (tender) {
    const solid = tender.freeLength - tender.solidLength;
    const stop =
      crossoverAt === undefined ? Number.POSITIVE_INFINITY : tenderStop(springs, tender, longest, crossoverAt);
    if (stop < solid) by = "stop";
    members.push({ name: "tender", spring: tender, most: Math.min(stop, solid) });
  }
  const { stretches, first } = stretchesOf(members);
  const end = stretches[1];
  const crossover =
    first === "tender" && end ? { shockLength: longest + preload - end.from, force: end.force, by } : null;
  return { longest, preload, members, stretches, crossover };
}

/** Compression of the tender when the slider meets its stop: its share k_main/(k_main + k_tender) of the stack's. */
function tenderStop({ main, preload }: SpringSet, tender: Spring, longest: number, crossoverAt: number): number {
  const stack = preload + longest - crossoverAt;
  return Math.max(0, (stack * main.rate) / (main.rate + tender.rate));
}

function stretchesOf(members: readonly StackMember[]): {
  readonly stretches: readonly Stretch[];
  /** Which one can no more first. */
  readonly first: SpringName;
} {
  const order = [...members].sort((a, b) => a.spring.rate * a.most - b.spring.rate * b.most);
  const stretches: Stretch[] = [];
  let at = { from: 0, force: 0, energy: 0 };
  for (let i = 0; i < order.length; i += 1) {
    const softness = order.slice(i).reduce((sum, { spring }) => sum + 1 / spring.rate, 0);
    const rate = 1 / softness;
    stretches.push({ ...at, rate });
    const force = order[i]!.spring.rate * order[i]!.most;
    const way = (force - at.force) * softness;
    at = { from: at.from + way, force, energy: at.energy + ((at.force + force) / 2) * way };
  }
  stretches.push({ ...at, rate: 0 });
  return { stretches, first: order[0]!.name };
}

/** `shockLength`: eye to eye, m. */
export function springStackAt(stack: SpringStack, shockLength: number): StackState {
  const squeezed = stack.preload + stack.longest - shockLength;
  const compression = Math.max(0, squeezed);
  const last = stack.stretches.length - 1;
  let index = 0;
  while (index < last && compression >= stack.stretches[index + 1]!.from) index += 1;
  const { from, force: begin, energy, rate } = stack.stretches[index]!;
  const way = compression - from;
  const force = begin + rate * way;
  return {
    force,
    rate: squeezed < 0 ? 0 : rate,
    energy: energy + ((begin + force) / 2) * way,
    loose: squeezed < 0 ? -squeezed : 0,
    isSolid: index === last,
    members: stack.members.map(({ name, spring, most }) => {
      const taken = Math.min(force / spring.rate, most);
      const length = spring.freeLength - taken;
      return { name, compression: taken, length, leftToSolid: length - spring.solidLength };
    }),
  };
}

/** Rate of two springs in series, N/m. */
export const seriesRate = (a: number, b: number): number => (a * b) / (a + b);

/**
 * Shock length at crossover out of the gap between slider and stop with the shock fully open, m: the slider moves up by
 * the tender's share, k_main/(k_main + k_tender), of what the shock goes in.
 */
export const crossoverFromGap = (longest: number, gap: number, mainRate: number, tenderRate: number): number =>
  longest - (gap * (mainRate + tenderRate)) / mainRate;

/** The same the other way about: where to put the stop, m from the slider with the shock fully open. */
export const gapFromCrossover = (longest: number, crossoverAt: number, mainRate: number, tenderRate: number): number =>
  ((longest - crossoverAt) * mainRate) / (mainRate + tenderRate);
