/** Damping at one position: what would be critical, and what the shock has to give for a share of it. */
export interface CriticalDamping {
  /** N·s/m of wheel speed. */
  readonly atWheel: number;
  /** N·s/m of shaft speed. */
  readonly atShock: number;
}

/** Share of critical in bump and in rebound. */
export interface DampingRatios {
  readonly bump: number;
  readonly rebound: number;
}

/** Common practice: 0.2 to 0.4 in bump, 0.4 to 0.7 in rebound. */
export const USUAL_RATIOS: DampingRatios = { bump: 0.3, rebound: 0.55 };

/**
 * Critical damping of the body over one wheel, c = 2·√(K·m) (OpenStax, College Physics, §16.7), and the same seen along the
 * shaft: the force at the wheel is MR × the shaft's, the shaft's speed MR × the wheel's, hence c_shock = c/MR².
 * Null where the rate is not positive or the shock does not move.
 */
export function criticalDamping(wheelRate: number, sprungMass: number, motionRatio: number): CriticalDamping | null {
  if (wheelRate <= 0 || Math.abs(motionRatio) < LEAST_RATIO) return null;
  const atWheel = 2 * Math.sqrt(wheelRate * sprungMass);
  return { atWheel, atShock: atWheel / motionRatio ** 2 };
}

/** A shock that moves less than this of the wheel's way does not damp it. */
const LEAST_RATIO = 1e-3;

export interface ShaftForce {
  /** m/s of the shaft. */
  readonly speed: number;
  /** N */
  readonly bump: number;
  readonly rebound: number;
}

/** Force that the shock should make at each shaft speed (m/s): share of critical × speed. */
export const shaftForces = (
  { atShock }: CriticalDamping,
  ratios: DampingRatios,
  speeds: readonly number[],
): readonly ShaftForce[] =>
  speeds.map((speed) => ({
    speed,
    bump: ratios.bump * atShock * speed,
    rebound: ratios.rebound * atShock * speed,
  }));
