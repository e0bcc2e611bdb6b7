declare module "virtual:survey-later" {
  /** Fetches what solves surveys, for every reading from then on. */
  export const fetchSurvey: () => Promise<void>;
  /** Does the work; where a survey has to be solved for it first, fetches that and does the work again. */
  export const withSurvey: <T>(work: () => Promise<T>) => Promise<T>;
}
