import type { ReactNode } from "react";
import { cornerPlace } from "../../store/sides.ts";
import * as car from "./car-sketches.tsx";
import * as wheel from "./wheel-sketches.tsx";

/** A small picture of where the tape goes, and how to hold it. */
export interface Sketch {
  readonly draw: (text: string) => ReactNode;
  readonly how: string;
}

/** The first pattern that fits the field's place decides. */
const SKETCHES: readonly (readonly [RegExp, Sketch])[] = [
  [
    /^wheel\.freeRadius$/,
    {
      draw: (text) => <wheel.FreeRadius text={text} />,
      how: "Off the ground: measure straight across the tyre, and take half.",
    },
  ],
  [
    /^wheel\.loadedRadius$/,
    {
      draw: (text) => <wheel.LoadedRadius text={text} />,
      how: "Car on its wheels: from the floor to the middle of the hub.",
    },
  ],
  [
    /^wheel\.sectionWidth$/,
    {
      draw: (text) => <wheel.SectionWidth text={text} />,
      how: "Two straight edges against the sidewalls; read between them.",
    },
  ],
  [
    /^wheel\.rimDiameter$/,
    { draw: (text) => <wheel.RimDiameter text={text} />, how: "As the wheel is sold: where the tyre's bead sits." },
  ],
  [
    /^wheel\.rimInsideDiameter$/,
    { draw: (text) => <wheel.RimInside text={text} />, how: "Inside the barrel, at its narrowest." },
  ],
  [
    /^wheel\.rimWidth$/,
    { draw: (text) => <wheel.RimWidth text={text} />, how: "As the wheel is sold: between the bead seats." },
  ],
  [
    /^wheel\.offset$/,
    { draw: (text) => <wheel.Offset text={text} />, how: "From the middle of the wheel to the face that bolts on." },
  ],
  [
    /^wheel\.backspacing$/,
    {
      draw: (text) => <wheel.Backspacing text={text} />,
      how: "Straight edge over the rim's inboard edge; read to the face that bolts on.",
    },
  ],
  [
    /^wheel\.flangeWidth$/,
    { draw: (text) => <wheel.Flange text={text} />, how: "From the bead seat to the rim's outer edge." },
  ],
  [
    /^wheel\.shoulderRadius$/,
    { draw: (text) => <wheel.Shoulder text={text} />, how: "How round the tyre's shoulder is." },
  ],
  [
    /^wheel\.camber$/,
    { draw: (text) => <wheel.Camber text={text} />, how: "Angle finder on the rim; top leaning out counts as plus." },
  ],
  [
    /^wheel\.toe$/,
    { draw: (text) => <wheel.Toe text={text} />, how: "Against a string along the car; front edge in counts as plus." },
  ],
  [
    /^strap\.length$/,
    {
      draw: (text) => <car.Eyes text={text} />,
      how: "Pull it tight. Hook in one hole, read at the centre of the other.",
    },
  ],
  [
    /^shock\.(shortest|longest)$/,
    { draw: (text) => <car.Eyes text={text} />, how: "From the centre of one eye to the centre of the other." },
  ],
  [
    /^shock\.eyeWidth$/,
    { draw: (text) => <car.EyeInTabs text={text} isGap={false} />, how: "Across the eye along its bolt, spacers off." },
  ],
  [
    /^shock\.tabGap$/,
    { draw: (text) => <car.EyeInTabs text={text} isGap />, how: "From face to face of the two tabs, inside." },
  ],
  [
    /^bumpStop\.reach$/,
    { draw: (text) => <car.Stop text={text} solid={false} />, how: "From its foot to its free face." },
  ],
  [
    /^bumpStop\.solid$/,
    { draw: (text) => <car.Stop text={text} solid />, how: "Squeezed in a vice until it gives no more: foot to face." },
  ],
  [
    /^(targets|stops)\.bump$/,
    { draw: (text) => <car.Travel text={text} down={false} />, how: "Up from ride height, at the hub." },
  ],
  [
    /^(targets|stops)\.droop$/,
    { draw: (text) => <car.Travel text={text} down />, how: "Down from ride height, at the hub." },
  ],
  [
    /^targets\.trackWidth$/,
    { draw: (text) => <car.Track text={text} />, how: "Between the middles of the two tyres, on the floor." },
  ],
  [
    /^targets\.wheelbase$/,
    { draw: (text) => <car.Wheelbase text={text} />, how: "Between front and rear tyres, on the floor." },
  ],
  [
    /^(targets\.clearanceAtFullBump|weights\.centreOfGravityHeight)$/,
    { draw: (text) => <car.Height text={text} />, how: "Straight up from the floor." },
  ],
  [
    /^weights\./,
    {
      draw: (text) => <car.Weight text={text} />,
      how: "Scale under one rear wheel, people in, tank half full, floor level.",
    },
  ],
  [
    /\.angleLimit$|misalignmentLimit$|yokePhase$/,
    {
      draw: (text) => <car.Bend text={text} />,
      how: "Its maker's figure; or bend it by hand and read the angle finder on both sides.",
    },
  ],
  [
    /\.(engagement|leastEngagement)$/,
    {
      draw: (text) => <car.Slip text={text} part="in" />,
      how: "Mark the shaft, pull the yoke off, read the length that was inside.",
    },
  ],
  [
    /\.pushInLeft$/,
    {
      draw: (text) => <car.Slip text={text} part="left" />,
      how: "Push it in until it bottoms, and read how far it went.",
    },
  ],
  [
    /\.holeSpacing$/,
    { draw: (text) => <car.Holes text={text} />, how: "From the middle of one bolt hole to the middle of the other." },
  ],
  [/[dD]iameter$/, { draw: (text) => <car.Tube text={text} />, how: "Across the outside." }],
  [/\.clearance$/, { draw: (text) => <car.Gap text={text} />, how: "The gap that you want to keep." }],
  [
    /\.x$/,
    {
      draw: (text) => <car.Forward text={text} />,
      how: "Plumb down to the floor; read from the mark, forward is plus.",
    },
  ],
  [/\.y$/, { draw: (text) => <car.Out text={text} />, how: "Plumb down to the floor; read out from the centreline." }],
  [
    /\.z$/,
    {
      draw: (text) => <car.Up text={text} />,
      how: "From the floor straight up, car at ride height, to the centre of the bolt.",
    },
  ],
];

export const sketchOf = (place: string): Sketch | undefined => {
  const plain = cornerPlace(place);
  return SKETCHES.find(([pattern]) => pattern.test(plain))?.[1];
};
