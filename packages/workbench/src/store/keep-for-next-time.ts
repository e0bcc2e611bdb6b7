import { bench } from "./bench.ts";
import { connection } from "./connection.ts";
import { forgetFirstCar, keepFirstCar } from "./first-car.ts";

/** Forgets the kept car as soon as the one on the bench is another, or another state of it: a page that crashes leaves none. */
export const followFirstCar = (): void => {
  bench.subscribe(({ document }, before) => {
    if (document !== before.document) forgetFirstCar();
  });
};

/** As the page is left: the car as it stands, where it is read, whole, and the left side of it; else none. */
export function keepForNextTime(): void {
  const { name } = connection.getState();
  const { document, live, side, moving } = bench.getState();
  if (name !== null && document && live.car && !live.isOlder && side === "left" && !moving)
    keepFirstCar(name, live.car);
  else forgetFirstCar();
}
