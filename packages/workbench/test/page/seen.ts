import type { Locator } from "playwright-core";

/** Text as it is seen: without what is only read aloud, fractions with a plain stroke, a hyphen for minus. */
export const seen = (of: Locator): Promise<string> =>
  of.evaluate((element) => {
    const copy = element.cloneNode(true) as HTMLElement;
    for (const unseen of copy.querySelectorAll(".unseen")) unseen.remove();
    for (const fraction of copy.querySelectorAll(".q")) fraction.prepend(" ");
    return (copy.textContent ?? "")
      .replace(/\u2044/g, "/")
      .replace(/\u2212/g, "-")
      .replace(/\s+/g, " ")
      .replace(/([-+]) /g, "$1")
      .trim();
  });
