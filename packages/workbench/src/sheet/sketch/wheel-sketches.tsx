import type { ReactNode } from "react";
import { Dimension } from "./Dimension.tsx";

interface Props {
  readonly text: string;
}

/** The wheel cut on the axle plane, outboard to the left; hub face to the right of the middle. */
function WheelSection(): ReactNode {
  return (
    <>
      <path className="cut" d="M34 18q0-10 12-10h44q12 0 12 10v26q0 10-7 14H87V50H49v8h-8q-7-4-7-14z" />
      <path className="cut" d="M34 182q0 10 12 10h44q12 0 12-10v-26q0-10-7-14H87v8H49v-8h-8q-7 4-7 14z" />
      <path className="heavy" d="M45 58h10q3 8 10 8h16q8 0 10-8M45 142h10q3-8 10-8h16q8 0 10 8M65 66q-6 18-6 34t6 34" />
      <path className="thin centre" d="M20 100h120M68 4v192" />
    </>
  );
}

const Front = (): ReactNode => (
  <>
    <circle cx="75" cy="88" r="68" className="line" />
    <circle cx="75" cy="88" r="32" className="line" />
    <circle cx="75" cy="88" r="3" className="dot" />
    <path className="ground" d="M4 150h142" />
    <path className="thin" d="M12 150l-6 6M36 150l-6 6M60 150l-6 6M84 150l-6 6M108 150l-6 6M132 150l-6 6" />
  </>
);

export const FreeRadius = ({ text }: Props): ReactNode => (
  <>
    <Front />
    <Dimension from={[75, 88]} to={[75, 20]} text={text} />
  </>
);
export const LoadedRadius = ({ text }: Props): ReactNode => (
  <>
    <Front />
    <Dimension from={[75, 88]} to={[75, 150]} text={text} />
  </>
);
export const SectionWidth = ({ text }: Props): ReactNode => (
  <>
    <WheelSection />
    <path className="thin" d="M34 30v-30M102 30v-30" />
    <Dimension from={[34, 28]} to={[102, 28]} text={text} />
  </>
);
export const RimDiameter = ({ text }: Props): ReactNode => (
  <>
    <WheelSection />
    <path className="thin" d="M95 58h32M95 142h32" />
    <Dimension from={[122, 58]} to={[122, 142]} text={text} />
  </>
);
export const RimInside = ({ text }: Props): ReactNode => (
  <>
    <WheelSection />
    <path className="thin" d="M82 67h44M82 133h44" />
    <Dimension from={[120, 67]} to={[120, 133]} text={text} />
  </>
);
export const RimWidth = ({ text }: Props): ReactNode => (
  <>
    <WheelSection />
    <path className="thin" d="M47 58v34M92 58v34" />
    <Dimension from={[47, 88]} to={[92, 88]} text={text} at={[112, 84]} />
  </>
);
export const Offset = ({ text }: Props): ReactNode => (
  <>
    <WheelSection />
    <path className="held" d="M59 84v32" />
    <Dimension from={[68, 122]} to={[59, 122]} text={text} at={[104, 122]} />
  </>
);
export const Backspacing = ({ text }: Props): ReactNode => (
  <>
    <WheelSection />
    <path className="thin" d="M96 56v60" />
    <path className="held" d="M59 84v32" />
    <Dimension from={[59, 112]} to={[96, 112]} text={text} at={[122, 116]} />
  </>
);
export const Flange = ({ text }: Props): ReactNode => (
  <>
    <WheelSection />
    <path className="thin" d="M87 50v-8M95 58v-16" />
    <Dimension from={[87, 46]} to={[97, 46]} text={text} at={[122, 46]} />
  </>
);
export const Shoulder = ({ text }: Props): ReactNode => (
  <>
    <WheelSection />
    <path className="held" d="M90 8q12 0 12 10" />
    <Dimension from={[90, 20]} to={[99, 11]} text={text} at={[124, 22]} />
  </>
);
export const Camber = ({ text }: Props): ReactNode => (
  <>
    <g transform="rotate(-7 75 150)">
      <rect x="46" y="14" width="58" height="136" rx="14" className="line" />
      <path className="held" d="M75 4v150" />
    </g>
    <path className="thin centre" d="M75 4v150" />
    <path className="ground" d="M4 151h142" />
    <Angle d="M60 26Q67 23 75 23" text={text} at={[118, 20]} />
    <text x="14" y="172" className="say">
      out
    </text>
  </>
);
export const Toe = ({ text }: Props): ReactNode => (
  <>
    <g transform="rotate(7 60 100)">
      <rect x="36" y="30" width="48" height="140" rx="10" className="line" />
      <path className="held" d="M60 14v172" />
    </g>
    <path className="thin centre" d="M60 14v172M140 14v172" />
    <Angle d="M60 22Q66 22 70 23" text={text} at={[104, 26]} />
    <text x="8" y="14" className="say">
      front
    </text>
  </>
);

const Angle = ({
  d,
  text,
  at,
}: {
  readonly d: string;
  readonly text: string;
  readonly at: readonly [number, number];
}): ReactNode => (
  <g className="sketch-dimension">
    <path d={d} />
    <text x={at[0]} y={at[1] + 5} textAnchor="middle">
      {text}
    </text>
  </g>
);
