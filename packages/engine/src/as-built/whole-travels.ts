import type { Car } from "../car/car.ts";

/** A height that can be blocked: whole inches, or steps of 25 mm, toward ride. m */
export function wholeTravel({ units }: Pick<Car, "units">, travel: number): number {
  const step = units === "metric" ? 0.025 : 0.0254;
  return (Math.trunc(travel / step + (travel > 0 ? 1e-9 : -1e-9)) || 0) * step;
}

/** Full and half droop, ride height, half and full bump, as they can be blocked; each once. */
export const wholeTravels = (car: Pick<Car, "units">, droop: number, bump: number): readonly number[] => [
  ...new Set([droop, droop / 2, 0, bump / 2, bump].map((travel) => wholeTravel(car, travel))),
];
