/** The day by the clock on the wall, `2026-11-25`: what a builder writes on paper is the day where they are. */
export const localDay = (now: Date): string =>
  [now.getFullYear(), two(now.getMonth() + 1), two(now.getDate())].join("-");

const two = (value: number): string => String(value).padStart(2, "0");
