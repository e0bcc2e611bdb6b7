import { fromUnit, type ShelfSpring } from "@armwright/engine";

const LENGTHS = [10, 12, 14, 16];
const RATES = [150, 175, 200, 225, 250, 275, 300, 350, 400, 450, 500];
/** Share of the free length at which a spring is solid: from memory, as the commands assume it. */
const SOLID_SHARE = 0.42;

/** An invented shelf to begin with: inches of free length, pounds per inch. */
export const INVENTED_SHELF: readonly ShelfSpring[] = LENGTHS.flatMap((inches) =>
  RATES.map((rate) => {
    const freeLength = fromUnit(inches, "length", "inch-pound");
    return {
      name: `${inches} in ${rate}`,
      rate: fromUnit(rate, "rate", "inch-pound"),
      freeLength,
      solidLength: SOLID_SHARE * freeLength,
    };
  }),
);
