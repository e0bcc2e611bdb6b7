import {
  type Car,
  EMULSION_RISE,
  formatNumber,
  formatValue,
  type RoadClass,
  roadHeat,
  USUAL_TYRE_RATE,
} from "@armwright/engine";
import type { Page } from "../text/page.ts";
import { hang } from "../text/wrap.ts";

const VERDICT = {
  "emulsion-enough": "an emulsion shock is enough for that",
  "reservoir-worth-it": "more than an emulsion shock likes: a reservoir is worth its money",
  "too-hot-for-either":
    "more than one shock of this size sheds, reservoir or not: slow down, or take a bigger or a second one",
} as const;

/** What a rough road puts into one shock, and what that makes of it. `speed`: m/s. */
export function heatLines({ shock, wheel }: Car, road: RoadClass, speed: number, page: Page): readonly string[] {
  if (!shock) return [];
  const made = roadHeat(shock, wheel.tyreRate ?? USUAL_TYRE_RATE, road, speed);
  const tyre =
    wheel.tyreRate === undefined
      ? `tyre rate assumed, ${formatValue(USUAL_TYRE_RATE, "rate", page.units)} (from memory)`
      : "the document's tyre rate";
  const rise = (kelvin: number) =>
    page.units === "metric" ? `${formatNumber(kelvin, 0)} deg C` : `${formatNumber(kelvin * 1.8, 0)} deg F`;
  const pace =
    page.units === "metric" ? `${formatNumber(speed * 3.6, 0)} km/h` : `${formatNumber(speed / 0.44704, 0)} mph`;
  const distance =
    page.units === "metric"
      ? `${formatNumber(made.perMetre, 0)} kJ a km`
      : `${formatNumber(made.perMetre, 0)} kJ a km (${formatNumber(made.perMetre * 1.609344, 0)} a mile)`;
  return [
    ...hang(
      "",
      `Road of class ${road} at ${pace}: ${distance} into each shock, ${formatNumber(made.power, 0)} W, whatever springs and damping are.`,
      page.width,
    ),
    ...hang(
      "",
      `In the long run ${rise(made.riseEmulsion)} over the air with the body alone (two thirds of it in ${formatNumber(made.warmsIn / 60, 0)} min), ${rise(made.riseReservoir)} with a reservoir: ${VERDICT[made.verdict]}.`,
      page.width,
    ),
    ...(shock.gas?.kind === "emulsion" && made.verdict !== "emulsion-enough"
      ? hang("", "THE DOCUMENT'S SHOCK IS AN EMULSION ONE.", page.width)
      : []),
    ...hang(
      "",
      `Rests on ${tyre}; ISO 8608 classes, wheel never off the ground (on whoops it is: less goes in), a body ${formatValue(made.oil, "volume", page.units)} full of oil and plain air flow (from memory). Emulsion is taken to suffer from ${rise(EMULSION_RISE)} over the air (from memory): good to a factor of two.`,
      page.width,
    ),
  ];
}
