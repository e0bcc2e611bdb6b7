import type { Car, Dimension } from "../car/car.ts";
import { formatValue } from "../units/format.ts";

/** Something that has to be known with an answer. Lengths m. */
export type SolveNote =
  | { readonly code: "does-not-go-together" }
  | { readonly code: "nothing-may-move" }
  | { readonly code: "at-the-edge"; readonly label: string }
  | { readonly code: "in-the-way"; readonly label: string; readonly value: number; readonly dimension: Dimension }
  | { readonly code: "clear-again"; readonly at: number; readonly label: string }
  | { readonly code: "document-refused" }
  | { readonly code: "right-is-own"; readonly sections: readonly string[] }
  | { readonly code: "shaft-cut-anew" }
  | { readonly code: "shaft-longer"; readonly by: number; readonly now: number }
  | { readonly code: "spline-too-short"; readonly needs: number; readonly has: number }
  | { readonly code: "spline-free"; readonly needs: number }
  | { readonly code: "nothing-in-the-way"; readonly within: number }
  | { readonly code: "touches-now"; readonly label: string }
  | { readonly code: "gearbox-stays" }
  | { readonly code: "springs-follow" }
  | { readonly code: "stopped-sooner"; readonly label: string; readonly travel: number }
  | { readonly code: "stop-too-tall"; readonly solid: number }
  | { readonly code: "out-of-range" };

/** A note as a plain sentence, in the car's units. */
export function saySolveNote(note: SolveNote, { units }: Pick<Car, "units">): string {
  const length = (metres: number): string => formatValue(Math.abs(metres), "length", units);
  const value = (number: number, dimension: Dimension): string => formatValue(number, dimension, units);
  switch (note.code) {
    case "does-not-go-together":
      return "Nowhere in the zone does the linkage go together over the whole travel: take a smaller travel or a wider zone.";
    case "nothing-may-move":
      return "Nothing may be moved: give at least one direction a length.";
    case "at-the-edge":
      return `The best lies at the edge of the zone (${note.label}): a wider zone may give a better one.`;
    case "in-the-way":
      return `${value(note.value, note.dimension)} could be had where something is in the way (${note.label}): such places are passed over.`;
    case "clear-again":
      return `Behind what is met first (${note.label}) the tyre is clear again, ${length(note.at)} farther forward than now: nothing has to pass there when you build, but look at what else would touch.`;
    case "document-refused":
      return "The document would be refused with these values: nothing can be applied.";
    case "right-is-own":
      return `The right side has its own ${note.sections.join(", ")}: only the left side is moved. Ask the right one by itself.`;
    case "shaft-cut-anew":
      return "The shaft is cut to the new length; its slip engagement at ride height is taken to stay as it is.";
    case "shaft-longer":
      return note.by === 0
        ? `Joint centre to joint centre at ride height stays ${length(note.now)}; the shaft is cut as it is.`
        : `Joint centres stay ${length(note.now)} apart at ride height; cut the shaft's tube ${length(note.by)} ${note.by > 0 ? "longer" : "shorter"}, so that the slip stands ${note.by > 0 ? "farther in" : "farther out"}.`;
    case "spline-too-short":
      return `No length of shaft does it: the slip has ${length(note.has)} from bottomed to pulled apart, ${length(note.needs)} is needed. What is short is shared between both ends.`;
    case "spline-free":
      return `The document does not say how far the slip can be pushed in: one that has ${length(note.needs)} from bottomed to pulled apart is needed.`;
    case "nothing-in-the-way":
      return `Nothing comes in the way within ${length(note.within)}: another reason will have to end it.`;
    case "touches-now":
      return `It is nearer than wanted as it stands (${note.label}), so the corner has to go back.`;
    case "gearbox-stays":
      return "The gearbox and its output stay: mind the joint angles.";
    case "springs-follow":
      return "Springs, preload and strap are kept: set the preload for the new height and look at droop travel.";
    case "stopped-sooner":
      return `${note.label} stops the wheel sooner, at ${length(note.travel)} of bump as drawn now.`;
    case "stop-too-tall":
      return `The bump stop would have to be ${length(note.solid)} tall when solid: move its base instead.`;
    case "out-of-range":
      return "The linkage does not reach that height at all.";
  }
}
