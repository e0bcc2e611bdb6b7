import type { SpringStudy } from "@armwright/engine";
import { type Field, fieldsOf } from "./declare.ts";

const f = fieldsOf<SpringStudy>();

/** Springs as the study's file tells them: where the car sits on them and how stiff they are there. */
export const springsForm: Field<SpringStudy> = f.record(
  "Where the car sits on its springs; left out where shock, springs or weights are not given.",
  {
    on: f.word("What it sits on.", ["springs", "droop-stop", "bump-stop"], ({ rest }) => rest.on),
    rest: f.quantity(
      "Wheel travel at which it sits; positive is lower than drawn.",
      "length",
      ({ rest }) => rest.travel,
    ),
    bumpLeft: f.quantity("Travel left from there in bump.", "length", ({ left }) => left.bump),
    droopLeft: f.quantity("Travel left from there in droop.", "length", ({ left }) => left.droop),
    wheelRate: f.maybe("There, without the tyre.", "rate", ({ positions }) => positions[1]?.state.wheelRate),
    rideFrequency: f.maybe("There.", "frequency", ({ frequency }) => frequency.ride),
    crossoverTravel: f.maybe("Where the main spring goes on alone.", "length", ({ crossover }) => crossover?.travel),
    frequencyBeyond: f.maybe("Just past it.", "frequency", ({ frequency }) => frequency.beyondCrossover),
    preloadForDesign: f.maybe(
      "With which it would sit as drawn.",
      "length",
      ({ preloadForDesign }) => preloadForDesign,
    ),
    looseAtDroop: f.quantity("Gap at the seats at full droop.", "length", ({ looseAtDroop }) => looseAtDroop),
  },
);
