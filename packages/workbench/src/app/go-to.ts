import { stepOfPlace } from "../steps/step-of-place.ts";
import { bench, chooseStep, hold, setTravel } from "../store/bench.ts";
import { placeOnSide } from "../store/sides.ts";

/** Goes to a place of the document: its step's sheet, its field, and the wheel's travel at which it matters. */
export function goToPlace(given: string, travel?: number): void {
  const { side, document } = bench.getState();
  const place = placeOnSide(given, side, document);
  const step = stepOfPlace(place);
  if (bench.getState().step !== step) chooseStep(step);
  if (travel !== undefined) setTravel(travel);
  if (place !== "") {
    hold({ place, as: "field" });
    requestAnimationFrame(() => focusField(place));
  }
}

/** Puts the keyboard on the field of a place, or on the first field inside it. */
function focusField(place: string): void {
  const fields = [...document.querySelectorAll<HTMLElement>("[data-field]")];
  const exact = fields.find(({ dataset }) => dataset["field"] === place);
  const inside = fields.find(({ dataset }) => dataset["field"]?.startsWith(place));
  const around = fields.find(({ dataset }) => dataset["field"] !== undefined && place.startsWith(dataset["field"]));
  const target = exact ?? inside ?? around;
  target?.scrollIntoView({ block: "nearest" });
  target?.focus({ preventScroll: true });
}
