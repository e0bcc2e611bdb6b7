import {
  formatValue,
  SOLVE_QUESTIONS,
  type SolveContext,
  type SolveInput,
  type SolveNeed,
  type SolveValues,
  solveNeed,
} from "@armwright/engine";
import type { Page } from "../text/page.ts";
import { table } from "../text/table.ts";
import { hang } from "../text/wrap.ts";

export const SOLVE_NEEDS: Readonly<Record<SolveNeed, string>> = {
  "other-linkage": "it is for another kind of linkage.",
  driveshaft: "the document has no half shaft: add the section driveshaft.",
  underbody: "the document names no low point of the body: add one under underbody.",
  "keep-outs": "the document has no keep-outs: add what the tyre has to stay clear of.",
  "stop-that-moves": "the shock itself ends the bump travel: add a bump stop first.",
};

/** What can be asked of a car. */
export function questionLines(context: SolveContext, page: Page): readonly string[] {
  const lines = SOLVE_QUESTIONS.flatMap((question) => {
    const need = solveNeed(context, question);
    return [
      "",
      page.bold(question.id),
      ...hang("  ", `${question.title}.`, page.width),
      ...(need
        ? hang("  ", `Not for this car: ${SOLVE_NEEDS[need]}`, page.width)
        : hang("  ", question.meaning, page.width)),
    ];
  });
  return [
    ...hang("", context.study.car.name, page.width).map(page.bold),
    ...lines,
    "",
    ...hang("", "Ask one: npx armwright solve CAR QUESTION. Its answer lists what it was asked with.", page.width),
  ];
}

/** The inputs of a question with the values it was asked with. */
export function askedLines(inputs: readonly SolveInput[], asked: SolveValues, page: Page): readonly string[] {
  const rows = inputs.map((input) => {
    const given = asked[input.id];
    const value = given ?? input.default;
    const choices = "choices" in input ? `: ${input.choices.map(({ id }) => id).join(", ")}` : "";
    const sign = "signed" in input && input.signed;
    return {
      cells: [
        input.id,
        `${formatValue(value, input.dimension, page.units, { sign })}${given === undefined ? "" : " *"}`,
        `${input.label}${choices}`,
      ],
    };
  });
  return [
    ...table(
      [
        { head: ["name"], align: "left" },
        { head: ["value"], align: "left", gives: true },
        { head: ["what it is"], align: "left", gives: true },
      ],
      rows,
      page.width,
    ),
    ...hang("", 'Change any with --with "NAME=VALUE, NAME=VALUE". * as given, the others as nobody said.', page.width),
  ];
}
