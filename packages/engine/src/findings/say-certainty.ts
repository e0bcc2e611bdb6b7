import type { UncertainInput } from "../certainty/inputs.ts";
import type { MatterSource } from "../certainty/study-certainty.ts";
import type { CarSurvey } from "../survey/car-survey.ts";
import type { SaidFinding } from "./say-finding.ts";
import { sayReading } from "./say-survey.ts";

type Words = Record<string, string>;

const AXIS_WORDS = { x: "fore and aft", y: "in and out", z: "up and down" } as const;

/** What may be off, in the builder's words: `shock, upper, up and down`; `camber as it is set`. */
export const sayInput = (input: UncertainInput): string =>
  input.kind === "setting" ? `${input.setting} as it is set` : `${input.place.label}, ${AXIS_WORDS[input.axis]}`;

const MADE = {
  survey: "from the survey",
  stated: "your own ±",
  tacking: "weld",
  joint: "bought part",
  turning: "setting",
} as const;

/** What sort of thing that is. */
export const sayInputKind = (input: UncertainInput): string => MADE[input.from];

/** A weld, a setting, or a reading of the survey. */
export const sayMatter = (source: MatterSource, survey: CarSurvey | undefined): string => {
  if (source.kind === "input") return sayInput(source.input);
  const reading = survey?.survey.readings[source.reading];
  return survey && reading ? sayReading(survey.survey, reading) : "a reading of the survey";
};

/** Sentences on limits that are too near for what building and measuring leave open. */
export const CERTAINTY_SENTENCES = {
  "limit-uncertain": (w: Words): SaidFinding => ({
    sentence: `${capital(w["limit"] ?? "")}: ${w["left"]} of ${w["way"]} travel left past the ${w["stop"]}, ± ${w["plusMinus"]}, not safe to rely on. It would come first in about ${w["cars"]} of 100 cars built so.`,
    remedy: `Leave more room, or be surer: it hangs most on ${w["cause"]}.`,
  }),
};

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
