import { fileURLToPath } from "node:url";
import type { Plugin } from "vite";

const NAME = "virtual:survey-later";
const SOLVER = fileURLToPath(new URL("../../engine/src/survey/solve-survey.ts", import.meta.url));

/**
 * What solves a survey comes with the matrices it needs, and few cars have one: a document with a survey asks for it, and is
 * then read once more (`withSurvey`). Everything else is painted before it is fetched.
 */
export function surveyLater(): Plugin {
  return {
    name: "armwright-survey-later",
    enforce: "pre",
    resolveId(source, importer = "") {
      if (source === NAME) return `\0${NAME}`;
      const isReader = /[\\/]engine[\\/]src[\\/]document[\\/]surveyed\.ts$/.test(importer);
      return isReader && source === "../survey/solve-survey.ts" ? `\0${NAME}` : undefined;
    },
    load: (id) => (id === `\0${NAME}` ? MODULE : undefined),
  };
}

const MODULE = `
let solver;
class SurveyNeeded extends Error {}
export const solveSurvey = (...given) => {
  if (!solver) throw new SurveyNeeded("the solver of surveys has not been fetched");
  return solver(...given);
};
export const fetchSurvey = async () => {
  solver ??= (await import(${JSON.stringify(SOLVER)})).solveSurvey;
};
export const withSurvey = async (work) => {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof SurveyNeeded)) throw error;
    await fetchSurvey();
    return work();
  }
};
`;
