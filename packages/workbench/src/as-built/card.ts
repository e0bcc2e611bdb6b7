import {
  type BodyId,
  type CardKind,
  type CardReading,
  cornerPlaces,
  type Dimension,
  placeMember,
  placeOn,
  pointAt,
  positionOf,
  type Study,
  type SurveyReading,
  solveAt,
  type Vec3,
} from "@armwright/engine";

/** What can be read with the wheel blocked, as plain data. */
export interface Card {
  readonly kind: CardKind;
  /** The tube that the finder is held along, or the point. */
  readonly of?: string;
  readonly label: string;
  readonly dimension: Dimension;
  readonly isFine: boolean;
}

export const cardOf = ({ kind, of, label, dimension, isFine }: CardReading): Card => ({
  kind,
  ...(of !== undefined && { of }),
  label,
  dimension,
  isFine,
});

/** Whether both are the same thing to read. */
export const isSameCard = (a: Pick<Card, "kind" | "of">, b: Pick<Card, "kind" | "of">): boolean =>
  a.kind === b.kind && a.of === b.of;

/** How each is read. */
export const HOW: Readonly<Record<CardKind, string>> = {
  "hub-height": "Tape plumb from the floor to the hub's centre.",
  "half-track": "Plumb the tyre's middle to the floor, tape square to the centreline.",
  camber: "Angle finder upright on the rim. + where the top leans out, \u2212 where it leans in.",
  "toe-at-rim": "Tape from the centreline's string to the rim's front and to its rear: rear less front. + toes in.",
  shock: "Tape from eye centre to eye centre.",
  "half-shaft": "Tape from joint centre to joint centre.",
  spline: "How far the spline is still in its sleeve.",
  strap: "Tape from hole to hole, straight, not along a slack strap.",
  "bump-stop": "Tape from the stop's base to the place that it lands on.",
  angle: "Angle finder along the tube. + where its outer end is the higher.",
  height: "At ride height: tape plumb from the floor to the bolt's middle.",
  out: "At ride height: plumb the bolt's middle to the floor, tape square to the centreline.",
  along: "At ride height: plumb the bolt's middle to the floor, tape along the car to the mark.",
};

/** Where the tape goes, with the wheel at a travel; null where a picture says nothing. */
export function cardPicture(
  { car, corner }: Study,
  { kind, of }: Pick<Card, "kind" | "of">,
  travel: number,
): {
  readonly points: readonly { readonly name: string; readonly at: Vec3 }[];
  readonly reading: SurveyReading;
} | null {
  const solved = solveAt(corner, travel);
  if (!solved) return null;
  const position = positionOf(corner, solved.state);
  const tape = (
    a: { readonly point: Vec3; readonly on: BodyId } | undefined,
    b: { readonly point: Vec3; readonly on: BodyId } | undefined,
    names: readonly [string, string],
  ) =>
    a && b
      ? {
          points: [a, b].map(({ point, on }, k) => ({ name: names[k]!, at: placeOn(position, point, on) })),
          reading: { kind: "tape", from: 0, to: 1, reads: 0, add: 0, isDeferred: false } as const,
        }
      : null;
  switch (kind) {
    case "shock":
      return tape(car.shock?.upper, car.shock?.lower, ["upper eye", "lower eye"]);
    case "strap":
      return tape(car.strap?.upper, car.strap?.lower, ["upper hole", "lower hole"]);
    case "bump-stop":
      return tape(car.bumpStop?.base, car.bumpStop?.strikes, ["base", "landing place"]);
    case "half-shaft":
      return tape(
        car.driveshaft && { point: car.driveshaft.inner.centre, on: "chassis" },
        car.driveshaft && { point: car.driveshaft.outer.centre, on: "spindle" },
        ["inner joint", "outer joint"],
      );
    case "half-track":
    case "hub-height": {
      const at = position.wheelCentre;
      return kind === "hub-height"
        ? {
            points: [{ name: "hub", at }],
            reading: { kind: "height", point: 0, reads: 0, add: 0, isDeferred: false },
          }
        : {
            points: [{ name: "tyre's middle", at: { ...at, z: 0 } }],
            reading: { kind: "out", point: 0, reads: 0, add: 0, isDeferred: false },
          };
    }
    case "angle": {
      const member = corner.members.find(({ label }) => label === of);
      return member
        ? {
            points: placeMember(position, member).map((at, k) => ({ name: k === 0 ? "inner end" : "outer end", at })),
            reading: { kind: "level", from: 0, to: 1, reads: 0, isDeferred: false },
          }
        : null;
    }
    case "height":
    case "out":
    case "along": {
      const place = cornerPlaces(car).find(({ label }) => label === of);
      return place
        ? {
            points: [{ name: place.label, at: pointAt(car, place) }],
            reading: { kind, point: 0, reads: 0, add: 0, isDeferred: false },
          }
        : null;
    }
    case "camber":
    case "toe-at-rim":
    case "spline":
      return null;
  }
}
