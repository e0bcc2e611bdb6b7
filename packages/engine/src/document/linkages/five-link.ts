import type { Fields } from "../fields.ts";
import { valueAt } from "../path.ts";
import { kindField, type LinkageForm, linkPivots } from "./form.ts";
import { linkFields } from "./link.ts";

export const fiveLinkSection = (f: Fields) =>
  f.section("Five links, each with a rod end at both ends.", {
    kind: kindField("five-link"),
    links: f.list(
      "The five links, in any order.",
      f.section("A link.", { name: f.text("What it is called, e.g. `front lower`."), ...linkFields(f) }),
    ),
  });

export const FIVE_LINK: LinkageForm = {
  kind: "five-link",
  arms: [],
  pivots: (linkage) =>
    linksOf(linkage).flatMap((link, index) => {
      const name = valueAt(link, ["name"]);
      return typeof name === "string" ? linkPivots(`links.${name}`, ["links", index]) : [];
    }),
  axes: [],
  offAxis: [],
  apart: (linkage) =>
    linksOf(linkage).map((_, index) => [
      ["links", index, "inner"],
      ["links", index, "outer"],
    ]),
};

function linksOf(linkage: unknown): readonly unknown[] {
  const links = valueAt(linkage, ["links"]);
  return Array.isArray(links) ? links : [];
}
