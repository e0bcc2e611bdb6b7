/** A step of the builder's own sequence. */
export interface Step {
  readonly id: StepId;
  readonly title: string;
  readonly sentence: string;
  /** Places of the document that are entered here, in the order in which they are asked. */
  readonly places: readonly string[];
  /** Ids of quantities whose values at the present travel are shown. */
  readonly results: readonly string[];
  /** Ids of quantities that are charted, at most five. */
  readonly charts: readonly string[];
  /** Its sheet has long tables and charts of its own: on a laptop it stands upright beside the board. */
  readonly isTall?: boolean;
  /** Much is entered here and little of it charted: the sheet has the charts' place unless the user wants them back. */
  readonly isRoomy?: boolean;
}

export type StepId =
  | "survey"
  | "stance"
  | "spindle"
  | "arms"
  | "driveshaft"
  | "travel"
  | "shock"
  | "springs"
  | "room"
  | "check"
  | "loads"
  | "landing"
  | "strength"
  | "book"
  | "as-built";

export const STEPS: readonly Step[] = [
  {
    id: "survey",
    title: "Survey",
    sentence: "What tape, level and plumb line read on your car, and the coordinates that come of it.",
    places: ["survey", "tolerances"],
    results: [],
    charts: ["camber", "toe", "motionRatio", "outerJoint+innerJoint", "plunge"],
  },
  {
    id: "stance",
    isRoomy: true,
    title: "Stance",
    sentence: "Wheel and tyre, how high the car stands, and what you are after.",
    places: [
      "wheel.freeRadius",
      "wheel.loadedRadius",
      "wheel.sectionWidth",
      "wheel.rimDiameter",
      "wheel.rimWidth",
      "wheel.camber",
      "wheel.toe",
      "wheel.shoulderRadius",
      "wheel.rimInsideDiameter",
      "targets",
      "weights",
      "name",
      "version",
      "datum",
    ],
    results: ["wheelZ", "groundClearance", "camber", "toe"],
    charts: ["camber", "toe", "halfTrackChange", "wheelbaseChange", "groundClearance"],
  },
  {
    id: "spindle",
    isRoomy: true,
    title: "Spindle",
    sentence: "Where the wheel bolts on, and where arms and links meet the spindle.",
    places: [
      "wheel.hubFace",
      "wheel.offset",
      "wheel.backspacing",
      "wheel.flangeWidth",
      "linkage.lowerArm.outerFront",
      "linkage.lowerArm.outerRear",
      "linkage.lowerArm.outer",
      "linkage.upperArm.outer",
      "linkage.upperLink.outer",
      "linkage.toeLink.outer",
      "linkage.trailingArm.hub",
      "linkage.links[*].outer",
    ],
    results: ["wheelX", "wheelY", "wheelZ", "camber", "toe"],
    charts: ["camber", "toe", "camberGain", "toeGain", "rollCentre"],
  },
  {
    id: "arms",
    title: "Arms",
    sentence: "Where arms and links meet the chassis: they decide how the wheel moves.",
    places: [
      "linkage.lowerArm.innerFront",
      "linkage.lowerArm.innerRear",
      "linkage.upperArm.innerFront",
      "linkage.upperArm.innerRear",
      "linkage.upperLink.inner",
      "linkage.toeLink.inner",
      "linkage.trailingArm.inboardPivot",
      "linkage.trailingArm.outboardPivot",
      "linkage.links[*].inner",
      "linkage.lowerArm.diameter",
      "linkage.upperArm.diameter",
      "linkage.upperLink.diameter",
      "linkage.toeLink.diameter",
      "linkage.trailingArm.diameter",
      "linkage.links[*].diameter",
      "rodEnds",
    ],
    results: ["camber", "camberGain", "toe", "toeGain", "rollCentre", "antiSquat"],
    charts: ["camber", "toe", "halfTrackChange", "rollCentre", "antiSquat"],
  },
  {
    id: "driveshaft",
    title: "Driveshaft",
    sentence: "Half shaft from gearbox to wheel: how far it bends, and how far it slides.",
    places: [
      "driveshaft.inner.kind",
      "driveshaft.inner.angleLimit",
      "driveshaft.outer.kind",
      "driveshaft.outer.angleLimit",
      "driveshaft.slip",
      "driveshaft",
    ],
    results: ["innerJoint", "outerJoint", "shaftLength", "plunge", "slipEngagement", "speedRipple"],
    charts: ["innerJoint", "outerJoint", "plunge", "slipEngagement", "speedRipple"],
  },
  {
    id: "travel",
    title: "Travel",
    sentence: "How far the wheel may go, and what stops it.",
    places: [
      "strap.length",
      "bumpStop.reach",
      "bumpStop.solid",
      "targets.bump",
      "targets.droop",
      "stops",
      "strap",
      "bumpStop",
    ],
    results: ["strapSlack", "bumpStopGap", "bumpStopLeft", "groundClearance"],
    charts: ["camber", "toe", "motionRatio", "outerJoint+innerJoint", "plunge"],
  },
  {
    id: "shock",
    isRoomy: true,
    title: "Shock",
    sentence: "Where the shock hangs, and how much of it the wheel uses.",
    places: ["shock.shortest", "shock.longest", "shock"],
    results: ["shockLength", "motionRatio", "motionRatioSlope", "shockToArm", "shockLean"],
    charts: ["shockLength", "motionRatio", "motionRatioSlope", "shockToArm", "shockLean"],
  },
  {
    id: "springs",
    isRoomy: true,
    title: "Springs",
    sentence: "What holds the car up: where it sits, and how stiff it is.",
    places: ["shock.springs", "shock.gas", "damper"],
    results: ["springForce", "wheelForce", "wheelRate", "motionRatio"],
    charts: ["springForce", "wheelForce", "wheelRate", "motionRatio", "motionRatioSlope"],
  },
  {
    id: "room",
    isRoomy: true,
    title: "Room",
    sentence: "What everything has to stay clear of, and what hangs lowest.",
    places: ["underbody", "keepOuts", "chassisMesh"],
    results: ["groundClearance"],
    charts: ["groundClearance", "halfTrackChange", "wheelbaseChange", "camber", "toe"],
  },
  {
    id: "check",
    title: "Check",
    sentence: "Everything found, and every value that was put in for you.",
    places: [],
    results: [],
    charts: ["camber", "toe", "motionRatio", "outerJoint+innerJoint", "plunge"],
  },
  {
    id: "loads",
    title: "Loads",
    sentence: "Blows that the wheel may get, and the force that each puts on every joint.",
    places: ["loads"],
    results: [],
    charts: ["camber", "toe", "motionRatio", "outerJoint+innerJoint", "plunge"],
    isTall: true,
  },
  {
    id: "landing",
    title: "Landing",
    sentence: "The wheel let fall, or sent over bumps and rough ground, and what that does.",
    places: [],
    results: [],
    charts: ["camber", "toe", "motionRatio", "outerJoint+innerJoint", "plunge"],
    isTall: true,
  },
  {
    id: "strength",
    title: "Strength",
    sentence: "Whether the parts hold in the load cases, weakest first.",
    places: ["strength"],
    results: [],
    charts: ["camber", "toe", "motionRatio", "outerJoint+innerJoint", "plunge"],
    isTall: true,
  },
  {
    id: "book",
    title: "Book",
    sentence: "Paper for the bench: sheets, templates, cycle cards; and whether a sheet in your hand still holds.",
    places: [],
    results: [],
    charts: ["camber", "toe", "motionRatio", "outerJoint+innerJoint", "plunge"],
    isTall: true,
  },
  {
    id: "as-built",
    title: "As built",
    sentence: "What the tacked or finished car reads, held against the plan.",
    places: ["asBuilt"],
    results: [],
    charts: ["camber", "toe", "motionRatio", "outerJoint+innerJoint", "plunge"],
  },
];

/** Sections that are entered in a step's own work, or in the document: no form is made of them. */
export const NOT_FORMS: readonly string[] = ["chassisMesh", "survey", "loads", "strength", "asBuilt"];

export const stepOfId = (id: StepId): Step => STEPS.find((step) => step.id === id) ?? STEPS[0]!;
