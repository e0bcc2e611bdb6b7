import { rowAt } from "@armwright/engine";
import { type Makings, said } from "./sheet.ts";

/** What a quantity of the cycle is at full droop and at full bump, as rows of a table; none where the car has none. */
export function endsOf(
  makings: Makings,
  id: string,
  label: string,
  say: (value: number | null) => string = (value) => said(makings, value, dimensionOf(makings, id)),
): string[][] {
  const { cycle, corner, quantities } = makings.study;
  const quantity = quantities.find((each) => each.id === id);
  if (!quantity) return [];
  const at = (index: number): number | null => quantity.read(rowAt(cycle, index), corner);
  return [
    [`${label} at full droop`, say(at(0))],
    [`${label} at full bump`, say(at(cycle.travels.length - 1))],
  ];
}

const dimensionOf = ({ study }: Makings, id: string) =>
  study.quantities.find((each) => each.id === id)?.dimension ?? "length";
