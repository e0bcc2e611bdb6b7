import { quote } from "../fault.ts";
import { formatPath } from "../path.ts";
import { type PlacedFault, placed } from "../structure.ts";
import type { Side } from "./look.ts";

export function checkWheel({ look, base, name }: Side): readonly PlacedFault[] {
  const faults: PlacedFault[] = [];
  const at = (...parts: string[]) => [...base, "wheel", ...parts];
  const size = (field: string) => look.quantity(at(field));
  const typed = (field: string) => quote(look.value(at(field)));

  const out = look.quantity(at("hubFace", "y"));
  if (out !== undefined && (name === "left" ? out <= 0 : out >= 0)) {
    const found = quote(look.value(at("hubFace", "y")));
    faults.push(placed(at("hubFace", "y"), "wrong-side", { found, expected: name }));
  }
  if (look.value(at("offset")) !== undefined && look.value(at("backspacing")) !== undefined) {
    faults.push(placed(at("backspacing"), "both-given", { other: formatPath(at("offset")) }));
  }
  const free = size("freeRadius");
  const loaded = size("loadedRadius");
  if (free !== undefined && loaded !== undefined && loaded > free) {
    faults.push(
      placed(at("loadedRadius"), "loaded-over-free", { found: typed("loadedRadius"), expected: typed("freeRadius") }),
    );
  }
  const below = (field: string, most: number | undefined, expected: string) => {
    const value = size(field);
    if (value !== undefined && most !== undefined && value >= most) {
      faults.push(placed(at(field), "not-below", { found: typed(field), expected }));
    }
  };
  const section = size("sectionWidth");
  const rim = size("rimDiameter");
  below(
    "rimDiameter",
    free && 2 * free,
    `the tyre's diameter, twice the ${typed("freeRadius")} of ${formatPath(at("freeRadius"))}`,
  );
  below("rimInsideDiameter", rim, `the ${typed("rimDiameter")} of ${formatPath(at("rimDiameter"))}`);
  below(
    "shoulderRadius",
    section && section / 2,
    `half the ${typed("sectionWidth")} of ${formatPath(at("sectionWidth"))}`,
  );
  return faults;
}
