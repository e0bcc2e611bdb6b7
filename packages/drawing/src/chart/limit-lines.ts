import type { Car } from "@armwright/engine";

/** Where a quantity has a limit of its own (SI), by the quantity's id: what would stop the wheel. */
export function limitsOfQuantity(car: Car, id: string): readonly number[] {
  const { driveshaft, shock, rodEnds } = car;
  const given = (value: number | undefined): readonly number[] => (value === undefined ? [] : [value]);
  switch (id) {
    case "innerJoint":
      return given(driveshaft?.inner.angleLimit);
    case "outerJoint":
      return given(driveshaft?.outer.angleLimit);
    case "slipEngagement":
      return given(driveshaft?.slip?.leastEngagement);
    case "plunge": {
      const slip = driveshaft?.slip;
      if (!slip) return [];
      return [slip.engagement - slip.leastEngagement, ...given(slip.pushInLeft).map((left) => -left)];
    }
    case "shockLength":
      return shock ? [shock.shortest, shock.longest] : [];
    case "groundClearance":
      return [0];
    default:
      return id.startsWith("rodEnd:")
        ? given(rodEnds.find(({ pivot }) => `rodEnd:${pivot}` === id)?.misalignmentLimit)
        : [];
  }
}
