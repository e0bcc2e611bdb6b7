/** How warm the damper's work makes a shock: one lump of oil and metal. */
export interface OilHeat {
  /** K a minute while nothing cools it yet. */
  readonly risePerMinute: number;
  /** K above the air where it would settle, were the work to go on. */
  readonly settlesAt: number;
  /** s until it is two thirds of the way there. */
  readonly timeConstant: number;
}

/** From memory, no source: a 2.5 in shock with its oil and reservoir, about 3.5 kg of which half takes part at once, J/K. */
export const SHOCK_HEAT_CAPACITY = 2500;
/** From memory, no source: what a finned or bare body gives to moving air, W/K. */
export const SHOCK_COOLING = 5;

/** C·dT/dt = P − U·T, T above the air: rise P/C at first, P/U in the end, time constant C/U. `power` in W. */
export const oilHeat = (power: number): OilHeat => ({
  risePerMinute: (60 * power) / SHOCK_HEAT_CAPACITY,
  settlesAt: power / SHOCK_COOLING,
  timeConstant: SHOCK_HEAT_CAPACITY / SHOCK_COOLING,
});
