import type { Study } from "@armwright/engine";
import type { Page } from "../text/page.ts";
import { plain } from "../text/plain.ts";
import { hang } from "../text/wrap.ts";

/** What car this is, and how its numbers are to be read. */
export function heading({ car, corner }: Study, page: Page): readonly string[] {
  const units = car.units === "metric" ? "millimetres and degrees" : "inches and degrees";
  return [
    ...hang("", car.name, page.width).map(page.bold),
    ...hang("", `${capital(plain(corner.kind.title))}, ${units}. x = 0: ${car.datum}.`, page.width),
    ...hang("", "Travel counts at the wheel centre from ride height: bump (up) is +, droop is -.", page.width),
  ];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
