import type { Dimension } from "../car/car.ts";
import { springQuantities } from "../springs/spring-quantities.ts";
import type { Corner } from "./corner.ts";
import { ROW } from "./row.ts";

/** One number of a position: what it is, how it is shown, where it comes from. Tables, charts and files read this list. */
export interface Quantity {
  readonly id: string;
  /** As a builder calls it. */
  readonly label: string;
  /** For the head of a narrow column. */
  readonly short: string;
  readonly dimension: Dimension;
  /** Shown with its sign, because zero is the design position or a neutral value. */
  readonly signed: boolean;
  /** What it means, with its sign. */
  readonly meaning: string;
  /** How it is computed, in plain notation, with its source. */
  readonly basis: string;
  /** From a position's row; null where the quantity does not exist there. */
  readonly read: (row: Float64Array, corner: Corner) => number | null;
}

/** All quantities that this car has, in the order they are shown. */
export function quantitiesOf(corner: Corner): readonly Quantity[] {
  return [
    ...WHEEL,
    ...(corner.shock ? SHOCK : []),
    ...springQuantities(corner),
    ...(corner.shaft ? SHAFT : []),
    ...(corner.shaft && corner.car.driveshaft?.slip ? SLIP : []),
    ...(corner.shaft?.innerRipples || corner.shaft?.outerRipples ? RIPPLE : []),
    ...(corner.stops.strap ? STRAP : []),
    ...(corner.stops.bumpStop ? BUMP_STOP : []),
    ...(corner.stops.lowest === undefined ? [] : UNDERBODY),
    ...corner.car.rodEnds.map((end, index) => rodEndQuantity(corner, end.pivot, index)),
  ];
}

/** A turn slower than this, rad per m of travel, is no turn that tapes could tell: a centre more than some 25 m away. */
const NO_TURN = 0.04;

const at =
  (place: number) =>
  (row: Float64Array): number =>
    row[place]!;

/** Formulas are told in words, without axis letters: the workbench shows them to who asks how a number is known. */
const DEFINITION = "axes and signs as in ISO 8855: forward, left, up";

const WHEEL: readonly Quantity[] = [
  {
    id: "wheelX",
    label: "wheel centre, forward of the mark",
    short: "wheel fwd",
    dimension: "length",
    signed: true,
    meaning: "Wheel centre along the car, forward positive, from the builder's mark.",
    basis: "solved position of the linkage",
    read: at(ROW.wheelX),
  },
  {
    id: "wheelY",
    label: "wheel centre, out from centreline",
    short: "wheel out",
    dimension: "length",
    signed: false,
    meaning: "Wheel centre across the car, out from the centreline.",
    basis: "solved position of the linkage",
    read: at(ROW.wheelY),
  },
  {
    id: "wheelZ",
    label: "wheel centre, above ground at ride",
    short: "wheel up",
    dimension: "length",
    signed: false,
    meaning: "Wheel centre above the ground plane of the design position, the body standing still.",
    basis: "design height + travel",
    read: at(ROW.wheelZ),
  },
  {
    id: "camber",
    label: "camber",
    short: "camber",
    dimension: "angle",
    signed: true,
    meaning: "Inclination of the wheel plane, positive when the top leans out.",
    basis: `sine of camber = how far the wheel's axis dips toward its outer end ÷ its length; ${DEFINITION}`,
    read: at(ROW.camber),
  },
  {
    id: "toe",
    label: "toe, this wheel",
    short: "toe",
    dimension: "angle",
    signed: true,
    meaning: "Angle between the wheel plane and straight ahead seen from above, positive toe-in, one wheel.",
    basis: `tangent of toe = how far the outer end of the wheel's axis lies forward ÷ how far it lies out; ${DEFINITION}`,
    read: at(ROW.toe),
  },
  {
    id: "camberGain",
    label: "camber gain",
    short: "camber/",
    dimension: "angle-per-length",
    signed: true,
    meaning: "Change of camber by travel at this position.",
    basis: "how fast the spindle turns for each bit of travel; exact, not the difference of two positions",
    read: at(ROW.camberGain),
  },
  {
    id: "toeGain",
    label: "toe gain (bump steer)",
    short: "toe/",
    dimension: "angle-per-length",
    signed: true,
    meaning: "Change of toe by travel at this position.",
    basis: "how fast the spindle turns for each bit of travel; exact, not the difference of two positions",
    read: at(ROW.toeGain),
  },
  {
    id: "halfTrackChange",
    label: "half-track change (scrub)",
    short: "½ track",
    dimension: "length",
    signed: true,
    meaning: "How far the contact point moved out from its design position.",
    basis: "contact point: lowest point of a disc of the loaded radius in the wheel plane",
    read: at(ROW.halfTrackChange),
  },
  {
    id: "wheelbaseChange",
    label: "wheelbase change",
    short: "wheelbase",
    dimension: "length",
    signed: true,
    meaning: "How far the contact point moved back from its design position: the wheelbase grows.",
    basis: "contact point: lowest point of a disc of the loaded radius in the wheel plane",
    read: at(ROW.wheelbaseChange),
  },
  {
    id: "instantCentreOut",
    label: "front-view instant centre, out from centreline",
    short: "IC out",
    dimension: "length",
    signed: true,
    meaning: "Where the spindle turns about, seen from behind; none where the spindle only shifts.",
    basis:
      "how far out the contact point is − its speed up ÷ the spindle's speed of turning, seen from behind; the contact point carried by the spindle, wheel locked",
    read: (row) =>
      Math.abs(row[ROW.frontViewTurn]!) < NO_TURN
        ? null
        : row[ROW.contactY]! - row[ROW.contactVelocityZ]! / row[ROW.frontViewTurn]!,
  },
  {
    id: "instantCentreUp",
    label: "front-view instant centre, above ground",
    short: "IC up",
    dimension: "length",
    signed: true,
    meaning: "Height of that centre over the contact point.",
    basis:
      "speed out of the contact point ÷ the spindle's speed of turning, seen from behind; the contact point carried by the spindle, wheel locked",
    read: (row) =>
      Math.abs(row[ROW.frontViewTurn]!) < NO_TURN ? null : row[ROW.contactVelocityY]! / row[ROW.frontViewTurn]!,
  },
  {
    id: "rollCentre",
    label: "roll-centre height above ground",
    short: "roll ctr",
    dimension: "length",
    signed: true,
    meaning: "Roll centre over the contact point, both wheels at this travel.",
    basis:
      "how far out the contact point is × its speed out ÷ its speed up; the contact point carried by the spindle, wheel locked: the drawing-board construction, made in space",
    read: at(ROW.rollCentreHeight),
  },
  {
    id: "sideSwingArm",
    label: "side-view swing arm, length",
    short: "side arm",
    dimension: "length",
    signed: false,
    meaning: "From the contact point to where the spindle turns about, seen from the side; none where it only shifts.",
    basis:
      "speed of the contact point ÷ the spindle's speed of turning, seen from the side; the contact point carried by the spindle, wheel locked",
    read: (row) =>
      Math.abs(row[ROW.sideViewTurn]!) < NO_TURN
        ? null
        : Math.sqrt(row[ROW.contactVelocityX]! ** 2 + row[ROW.contactVelocityZ]! ** 2) /
          Math.abs(row[ROW.sideViewTurn]!),
  },
  {
    id: "sideSwingAngle",
    label: "side-view swing arm, angle up to the front",
    short: "side ang",
    dimension: "angle",
    signed: true,
    meaning: "Slope of the line from the contact point to that centre, rising to the front positive.",
    basis:
      "tangent of the angle = speed back of the contact point ÷ its speed up; the contact point carried by the spindle, wheel locked",
    read: at(ROW.sideSwingAngle),
  },
  {
    id: "antiSquat",
    label: "anti-squat",
    short: "anti-sq",
    dimension: "percent",
    signed: true,
    meaning: "Share of the squat under power that the linkage holds up, drive torque reacted on the body.",
    basis:
      "how far back the wheel centre goes for each bit that it rises × wheelbase ÷ height of the centre of gravity; by virtual work, load and drive force both at the wheel centre, all drive at the rear",
    read: at(ROW.antiSquat),
  },
  {
    id: "antiLift",
    label: "anti-lift in braking",
    short: "anti-lift",
    dimension: "percent",
    signed: true,
    meaning: "Share of the rear's rise under braking that the linkage holds down, brakes reacted on the spindle.",
    basis:
      "how far back the contact point goes for each bit that it rises, wheel locked, × wheelbase ÷ height of the centre of gravity × rear share of braking; by virtual work, load and brake force both at the contact point",
    read: at(ROW.antiLift),
  },
];

const SHOCK: readonly Quantity[] = [
  {
    id: "shockLength",
    label: "shock, eye to eye",
    short: "shock",
    dimension: "length",
    signed: false,
    meaning: "Distance between the shock's two eyes.",
    basis: "distance of the two mounts where they are now",
    read: at(ROW.shockLength),
  },
  {
    id: "motionRatio",
    label: "motion ratio (shock per wheel)",
    short: "MR",
    dimension: "ratio",
    signed: false,
    meaning: "Shock shortening ÷ wheel travel at this position; the trade also uses the inverse.",
    basis:
      "shock shortening ÷ wheel travel, from how fast both mounts move; exact, not the difference of two positions",
    read: at(ROW.motionRatio),
  },
  {
    id: "motionRatioSlope",
    label: "motion ratio, change by travel",
    short: "MR slope",
    dimension: "ratio-per-length",
    signed: true,
    meaning: "Positive: the shock works harder toward bump (rising rate).",
    basis:
      "change of the motion ratio ÷ wheel travel, from how both mounts move and speed up; exact, not the difference of two positions",
    read: at(ROW.motionRatioSlope),
  },
  {
    id: "shockToArm",
    label: "shock to arm",
    short: "to arm",
    dimension: "angle",
    signed: false,
    meaning:
      "Angle between the shock and the line from the arm's hinge to its lower mount; 90° is square. On the spindle: against the mount's path.",
    basis: "angle of the two lines where they are now",
    read: at(ROW.shockToArm),
  },
  {
    id: "shockLean",
    label: "shock lean from upright",
    short: "lean",
    dimension: "angle",
    signed: false,
    meaning: "True lean in space, not that of one view.",
    basis: "angle between the shock and the vertical",
    read: at(ROW.shockLean),
  },
];

const SHAFT: readonly Quantity[] = [
  {
    id: "innerJoint",
    label: "inner joint angle",
    short: "inner jt",
    dimension: "angle",
    signed: false,
    meaning: "Between the shaft and the gearbox output; 0 when straight.",
    basis: "angle of the two lines in space",
    read: at(ROW.innerJointAngle),
  },
  {
    id: "outerJoint",
    label: "outer joint angle",
    short: "outer jt",
    dimension: "angle",
    signed: false,
    meaning: "Between the shaft and the stub axle; 0 when straight.",
    basis: "angle of the two lines in space",
    read: at(ROW.outerJointAngle),
  },
  {
    id: "shaftLength",
    label: "shaft, joint to joint",
    short: "shaft",
    dimension: "length",
    signed: false,
    meaning: "Distance between the two joint centres.",
    basis: "distance of the two centres where they are now",
    read: at(ROW.shaftLength),
  },
  {
    id: "plunge",
    label: "plunge",
    short: "plunge",
    dimension: "length",
    signed: true,
    meaning: "Change of that distance from the design position, positive when longer.",
    basis: "shaft length − shaft length in the design position",
    read: at(ROW.plunge),
  },
];

const SLIP: readonly Quantity[] = [
  {
    id: "slipEngagement",
    label: "spline engaged",
    short: "spline",
    dimension: "length",
    signed: false,
    meaning: "Length of spline still engaged in the slip.",
    basis: "engagement in the design position − plunge",
    read: at(ROW.slipEngagement),
  },
];

const RIPPLE: readonly Quantity[] = [
  {
    id: "speedRipple",
    label: "speed ripple of the shaft's joints",
    short: "ripple",
    dimension: "percent",
    signed: false,
    meaning: "Fastest less slowest wheel speed within one turn, of the mean speed, at a steady gearbox output.",
    basis:
      "fastest ÷ slowest less slowest ÷ fastest within a turn, both joints one after the other; each U-joint runs at cos β ÷ (1 − sin² β cos² θ) of its input, β its angle, θ how far it has turned",
    read: at(ROW.speedRipple),
  },
  {
    id: "rippleAngle",
    label: "ripple as one joint's angle",
    short: "as joint",
    dimension: "angle",
    signed: false,
    meaning: "Angle at which a single U-joint would ripple as much.",
    basis: "cosine of the angle = slowest ÷ fastest within a turn",
    read: at(ROW.rippleAngle),
  },
];

const STRAP: readonly Quantity[] = [
  {
    id: "strapSlack",
    label: "strap slack",
    short: "slack",
    dimension: "length",
    signed: true,
    meaning: "Strap length less the distance between its holes; 0 when taut.",
    basis: "distance of the two mounts where they are now",
    read: at(ROW.strapSlack),
  },
];

const BUMP_STOP: readonly Quantity[] = [
  {
    id: "bumpStopGap",
    label: "gap at the bump stop",
    short: "stop gap",
    dimension: "length",
    signed: true,
    meaning: "From the stop's free face to where it lands; negative while it is squeezed.",
    basis: "distance of base and landing place − reach",
    read: at(ROW.bumpStopGap),
  },
  {
    id: "bumpStopLeft",
    label: "left until the bump stop is solid",
    short: "to solid",
    dimension: "length",
    signed: true,
    meaning: "How much nearer base and landing place may still come.",
    basis: "distance of base and landing place − solid height",
    read: at(ROW.bumpStopLeft),
  },
];

const UNDERBODY: readonly Quantity[] = [
  {
    id: "groundClearance",
    label: "underbody above ground",
    short: "belly",
    dimension: "length",
    signed: true,
    meaning: "Lowest listed point of the underbody over the ground, both wheels at this travel, body level.",
    basis: "height of the lowest point − height of the contact point",
    read: at(ROW.groundClearance),
  },
];

const rodEndQuantity = (corner: Corner, pivotId: string, index: number): Quantity => {
  const label = corner.pivots.find(({ id }) => id === pivotId)?.label ?? pivotId;
  return {
    id: `rodEnd:${pivotId}`,
    label: `rod end, ${label}`,
    short: pivotId,
    dimension: "angle",
    signed: false,
    meaning: "Tilt of the ball in its housing, which is set true to its bolt at ride height.",
    basis: "angle between bolt and housing; a link takes the turn about itself that suits both its ends",
    read: at(ROW.rodEnds + index),
  };
};
