import type { Study } from "@armwright/engine";
import { type Field, fieldsOf } from "./declare.ts";

type AxleRow = Study["axle"][number];
type AxlePosition = NonNullable<AxleRow["position"]>;

const w = fieldsOf<AxlePosition["left"]>();
const wheel = w.record("One wheel.", {
  camber: w.maybe("To the body, positive when the top leans out.", "angle", ({ camber }) => camber),
  camberToGround: w.maybe(
    "To the ground, positive when the top leans out.",
    "angle",
    ({ camberToGround }) => camberToGround,
  ),
  toe: w.maybe("To the body, positive toe-in.", "angle", ({ toe }) => toe),
});

const p = fieldsOf<AxlePosition>();
const position = p.record("How the axle stands.", {
  left: p.part(wheel, ({ left }) => left),
  right: p.part(wheel, ({ right }) => right),
  bodyRoll: p.maybe(
    "Of the body against the ground, positive when it leans to the right.",
    "angle",
    ({ bodyRoll }) => bodyRoll,
  ),
  trackWidth: p.maybe("Between the contact points.", "length", ({ trackWidth }) => trackWidth),
  rollCentreHeight: p.maybe("Above the ground.", "length", ({ rollCentre }) => rollCentre?.height),
  rollCentreOut: p.maybe(
    "From the centreline, positive to the left.",
    "length",
    ({ rollCentre }) => rollCentre?.outOfCentre,
  ),
});

const a = fieldsOf<AxleRow>();
export const axleForm: Field<AxleRow> = a.record("Both wheels at one pair of travels.", {
  motion: a.word(
    "Both together, one up by what the other goes down, or one of them alone.",
    ["heave", "roll", "one-wheel"],
    ({ motion }) => motion,
  ),
  leftTravel: a.quantity("Bump positive.", "length", ({ leftTravel }) => leftTravel),
  rightTravel: a.quantity("Bump positive.", "length", ({ rightTravel }) => rightTravel),
  position: a.orNothing("Null where a linkage does not reach its travel.", position, (row) => row.position),
});
