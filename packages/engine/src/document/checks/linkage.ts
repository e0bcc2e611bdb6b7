import { quote } from "../fault.ts";
import { linkageForm } from "../linkages/kinds.ts";
import { nearestWord } from "../nearest-word.ts";
import type { Path } from "../path.ts";
import { type PlacedFault, placed } from "../structure.ts";
import { checkApart, checkNames, checkOffAxis } from "./apart.ts";
import type { Side } from "./look.ts";

const LINKS_OF_FIVE_LINK = 5;

export function checkLinkage({ look, base, name }: Side): readonly PlacedFault[] {
  const at: Path = [...base, "linkage"];
  const form = linkageForm(look.value([...at, "kind"]));
  if (!form) return [];
  const faults: PlacedFault[] = [];
  const inside = (path: Path): Path => [...at, ...path];

  for (const [a, b] of form.axes) faults.push(...checkApart(look, inside(a), inside(b), "zero-axis"));
  for (const { point, axis } of form.offAxis) {
    faults.push(...checkOffAxis(look, inside(point), [inside(axis[0]), inside(axis[1])]));
  }
  for (const [a, b] of form.apart(look.value(at))) faults.push(...checkApart(look, inside(a), inside(b)));

  const links = look.value([...at, "links"]);
  if (form.kind === "five-link" && Array.isArray(links)) {
    if (links.length !== LINKS_OF_FIVE_LINK) {
      faults.push(
        placed([...at, "links"], "link-count", { found: String(links.length), expected: String(LINKS_OF_FIVE_LINK) }),
      );
    }
    faults.push(...checkNames(look, [...at, "links"]));
  }
  const leftKind = look.text(["linkage", "kind"]);
  if (name === "right" && leftKind !== undefined && linkageForm(leftKind) && leftKind !== form.kind) {
    faults.push(placed([...at, "kind"], "other-kind", { found: quote(form.kind), expected: quote(leftKind) }));
  }
  return faults;
}

export function checkRodEnds({ look, base, linkageAt }: Side): readonly PlacedFault[] {
  const form = linkageForm(look.value([...linkageAt, "kind"]));
  if (!form) return [];
  const pivots = form.pivots(look.value(linkageAt));
  const names = pivots.map((pivot) => pivot.name);
  return look.fieldNames([...base, "rodEnds"]).flatMap((name) => {
    const at: Path = [...base, "rodEnds", name];
    const pivot = pivots.find((each) => each.name === name);
    if (!pivot) {
      const suggestion = nearestWord(name, names);
      return [
        placed(at, "unknown-pivot", { found: quote(name), options: names, ...(suggestion ? { suggestion } : {}) }),
      ];
    }
    const boltOn = look.text([...at, "boltOn"]);
    if (boltOn === undefined || pivot.boltOn.some((body) => body === boltOn)) return [];
    return [placed([...at, "boltOn"], "wrong-bolt-body", { found: quote(boltOn), options: pivot.boltOn })];
  });
}
