/** A place of the document as a builder says it: `wheel, flange width`, `shock, springs, collar pitch`. */
export const placeInWords = (place: string): string =>
  place
    .replace(/\[\*\]/g, "")
    .replace(/\[(\d+)\]/g, (_, index: string) => `.number ${Number(index) + 1}`)
    .split(".")
    .map((step) => step.replace(/([a-z])([A-Z])/g, "$1 $2").toLowerCase())
    .join(", ");
