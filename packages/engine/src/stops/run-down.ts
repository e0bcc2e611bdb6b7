/** What happens to a mass that runs along the wheel's travel against forces. */
export interface RunDown {
  /** Where it comes to rest, or the end that it reaches still moving, m of travel. */
  readonly travel: number;
  /** Kinetic energy left at that end, J; 0 where it came to rest. */
  readonly left: number;
}

export interface Run {
  readonly from: number;
  readonly to: number;
  /** J */
  readonly energy: number;
  /** kg */
  readonly mass: number;
  /** N·s/m at the wheel; 0 for no damper. */
  readonly damping: number;
  /** Force along the way it runs, N, at a travel. */
  readonly force: (travel: number) => number;
}

const STEPS = 32;

/**
 * Work and energy along the way: dK/dz = F(z) − c·√(2K/m), K ≥ 0, by Runge and Kutta's fourth-order steps (Simpson's rule
 * where there is no damper). Follows the mass from `from` to `to` or to where it stands.
 */
export function runDown({ from, to, energy, mass, damping, force }: Run): RunDown {
  const way = to - from;
  const step = Math.abs(way) / STEPS;
  const slope = (f: number, kinetic: number): number => f - damping * Math.sqrt((2 * Math.max(0, kinetic)) / mass);
  let kinetic = energy;
  let f0 = force(from);
  for (let i = 0; i < STEPS; i += 1) {
    const at = from + (way * i) / STEPS;
    const f1 = force(at + way / STEPS / 2);
    const f2 = force(at + way / STEPS);
    const k1 = slope(f0, kinetic);
    const k2 = slope(f1, kinetic + (k1 * step) / 2);
    const k3 = slope(f1, kinetic + (k2 * step) / 2);
    const k4 = slope(f2, kinetic + k3 * step);
    const next = kinetic + ((k1 + 2 * k2 + 2 * k3 + k4) * step) / 6;
    if (next <= 0) return { travel: at + (way / STEPS) * (kinetic / (kinetic - next)), left: 0 };
    kinetic = next;
    f0 = f2;
  }
  return { travel: to, left: kinetic };
}
