import type { Study } from "@armwright/engine";
import { type Field, fieldsOf } from "./declare.ts";

type TurnEffect = Study["adjusters"][number];

const e = fieldsOf<NonNullable<TurnEffect["perTurn"]>>();
const effect = e.record("Change by one turn.", {
  camber: e.maybe("Positive when the top leans out.", "angle", ({ camber }) => camber),
  toe: e.maybe("This wheel, positive toe-in.", "angle", ({ toe }) => toe),
  halfTrack: e.maybe("The contact point outward.", "length", ({ halfTrack }) => halfTrack),
});

const h = fieldsOf<NonNullable<TurnEffect["camberHeld"]>>();
const held = h.record("With camber held.", {
  by: h.text("The adjuster that holds it.", ({ by }) => by),
  turns: h.maybe("Its turns to one turn of the first.", "turns", ({ turns }) => turns),
  toe: h.maybe("Change of toe, this wheel, positive toe-in.", "angle", ({ toe }) => toe),
  halfTrack: h.maybe("The contact point outward.", "length", ({ halfTrack }) => halfTrack),
});

const t = fieldsOf<TurnEffect>();
export const adjusterForm: Field<TurnEffect> = t.record(
  "One end or link that screws in and out, and what it does to the wheel at ride height.",
  {
    id: t.text("Its place in the document below `linkage`.", ({ adjuster }) => adjuster.id),
    label: t.text("In the trade's words.", ({ adjuster }) => adjuster.label),
    isTurnbuckle: t.flag(
      "The tube is turned and both ends move; otherwise one end is taken off and screwed.",
      ({ adjuster }) => adjuster.action === "turnbuckle",
    ),
    advance: t.maybe("How much longer one turn makes it.", "length", ({ advance }) => advance),
    perTurn: t.orNothing(
      "What a turn that makes it longer does; null where turns cannot be counted.",
      effect,
      ({ perTurn }) => perTurn,
    ),
    camberHeld: t.orNothing(
      "The same turn with a second adjuster turned along so that camber stays; null where none can.",
      held,
      ({ camberHeld }) => camberHeld,
    ),
  },
);
