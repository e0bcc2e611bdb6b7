/** Lines of a report under one heading. */
export function sectionOf(out: string, heading: string): readonly string[] {
  const lines = out.split("\n");
  const from = lines.indexOf(heading);
  if (from < 0) throw new Error(`no section ${heading}`);
  const length = lines.slice(from + 1).indexOf("");
  return lines.slice(from + 1, length < 0 ? undefined : from + 1 + length);
}

/** What a table says beside a name at the left, blanks made single. */
export function rowOf(lines: readonly string[], name: string): string {
  const row = lines.find((line) => line.startsWith(`${name} `));
  if (row === undefined) throw new Error(`no row ${name} in\n${lines.join("\n")}`);
  return row.slice(name.length).trim().replace(/\s+/g, " ");
}

const NEWTONS_A_POUND = 4.4482216152605;
export const INCH = 0.0254;

/** N in, whole pounds or newtons out. */
export const inForce =
  (units: "inch-pound" | "metric") =>
  (newtons: number): string =>
    (newtons / (units === "metric" ? 1 : NEWTONS_A_POUND)).toFixed(0).replace(/^-0$/, "0");

/** m in, a travel to the nearest sixteenth with its sign out. */
export function inInches(metres: number): string {
  const sixteenths = Math.round((Math.abs(metres) / INCH) * 16);
  if (sixteenths === 0) return "0";
  const whole = Math.floor(sixteenths / 16);
  let [top, bottom] = [sixteenths % 16, 16];
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  const fraction = top === 0 ? "" : `${top}/${bottom}`;
  const text = [whole > 0 || top === 0 ? String(whole) : "", fraction].filter((part) => part !== "").join(" ");
  return `${metres < 0 ? "-" : "+"}${text}`;
}

/** m in, a travel to the nearest half millimetre with its sign out. */
export function inMillimetres(metres: number): string {
  const halves = Math.round(Math.abs(metres) * 2000) / 2;
  return halves === 0 ? "0" : `${metres < 0 ? "-" : "+"}${halves}`;
}
