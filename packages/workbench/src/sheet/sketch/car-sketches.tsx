import type { ReactNode } from "react";
import { Dimension } from "./Dimension.tsx";

interface Props {
  readonly text: string;
}

const Ground = (): ReactNode => (
  <path className="ground" d="M4 168h142M12 168l-6 6M36 168l-6 6M60 168l-6 6M84 168l-6 6M108 168l-6 6M132 168l-6 6" />
);
const Pivot = ({
  x,
  y,
  held = false,
}: {
  readonly x: number;
  readonly y: number;
  readonly held?: boolean;
}): ReactNode => (
  <g className={held ? "pivot is-held" : "pivot"}>
    <circle cx={x} cy={y} r="7" />
    <circle cx={x} cy={y} r="1.8" className="dot" />
  </g>
);

/** From behind: wheel, two links, the centreline. */
const Behind = (): ReactNode => (
  <>
    <rect x="8" y="84" width="30" height="84" rx="9" className="line" />
    <path className="line" d="M38 112h8v40h-8" />
    <path className="line" d="M46 116L112 110M46 146L112 142" />
    <path className="thin centre" d="M140 20v154" />
    <Ground />
  </>
);

export const Up = ({ text }: Props): ReactNode => (
  <>
    <Behind />
    <Pivot x={112} y={110} held />
    <Dimension from={[112, 118]} to={[112, 168]} text={text} />
  </>
);
export const Out = ({ text }: Props): ReactNode => (
  <>
    <Behind />
    <Pivot x={46} y={116} held />
    <path className="thin" d="M46 108V60M140 66v-8" />
    <Dimension from={[46, 64]} to={[140, 64]} text={text} />
  </>
);
export const Forward = ({ text }: Props): ReactNode => (
  <>
    <path className="ground" d="M10 40h130M10 160h130" />
    <path className="thin centre" d="M106 14v172" />
    <text x="106" y="12" className="say" textAnchor="middle">
      the mark
    </text>
    <Pivot x={44} y={100} held />
    <path className="thin" d="M44 108v34" />
    <Dimension from={[106, 132]} to={[44, 132]} text={text} />
    <text x="8" y="182" className="say">
      front
    </text>
  </>
);
export const Eyes = ({ text }: Props): ReactNode => (
  <>
    <path className="line" d="M4 6h62v18H4zM40 24h26l4 16h-22z" />
    <path className="line" d="M64 168l80-8 2 18-80 8zM96 164l5-16h22l8 13" />
    <path className="held band" d="M56 36L112 150" />
    <Pivot x={56} y={36} held />
    <Pivot x={112} y={150} held />
    <path className="thin" d="M62 33l32-16M118 147l24-12" />
    <Dimension from={[84, 22]} to={[138, 137]} text={text} />
  </>
);
export const Stop = ({ text, solid }: Props & { readonly solid: boolean }): ReactNode => (
  <>
    <path className="line" d="M30 16h90v16H30z" />
    <path className={solid ? "cut" : "line"} d={solid ? "M56 32h38l12 34H44z" : "M60 32h30l6 74H54z"} />
    <path className="line" d="M20 160h110v12H20z" />
    <path className="thin" d={solid ? "M106 66h24M120 32h12" : "M96 106h34M120 32h12"} />
    <Dimension from={[126, 32]} to={[126, solid ? 66 : 106]} text={text} at={[112, solid ? 88 : 128]} />
  </>
);
export const Travel = ({ text, down }: Props & { readonly down: boolean }): ReactNode => (
  <>
    <rect x="30" y="66" width="40" height="94" rx="11" className="line" />
    <rect x="30" y={down ? 96 : 36} width="40" height="94" rx="11" className="pencil" />
    <path className="thin" d={`M50 113h74M50 ${down ? 143 : 83}h74`} />
    <Dimension from={[112, 113]} to={[112, down ? 143 : 83]} text={text} at={[112, down ? 164 : 64]} />
    <text x="4" y="118" className="say">
      ride
    </text>
  </>
);
export const Track = ({ text }: Props): ReactNode => (
  <>
    <rect x="6" y="70" width="26" height="96" rx="8" className="line" />
    <rect x="118" y="70" width="26" height="96" rx="8" className="line" />
    <Ground />
    <path className="thin centre" d="M19 60v122M131 60v122" />
    <Dimension from={[19, 184]} to={[131, 184]} text={text} at={[75, 184]} />
  </>
);
export const Wheelbase = ({ text }: Props): ReactNode => (
  <>
    <circle cx="30" cy="144" r="22" className="line" />
    <circle cx="120" cy="144" r="22" className="line" />
    <path className="line" d="M14 112L40 84l34-6 16-26 30 4 18 56" />
    <Ground />
    <path className="thin" d="M30 144v46M120 144v46" />
    <Dimension from={[30, 184]} to={[120, 184]} text={text} />
  </>
);
export const Height = ({ text }: Props): ReactNode => (
  <>
    <circle cx="30" cy="144" r="22" className="line" />
    <circle cx="120" cy="144" r="22" className="line" />
    <path className="line" d="M14 112L40 84l34-6 16-26 30 4 18 56z" />
    <Ground />
    <circle cx="78" cy="104" r="5" className="held" />
    <Dimension from={[78, 109]} to={[78, 168]} text={text} />
  </>
);
export const Weight = ({ text }: Props): ReactNode => (
  <>
    <circle cx="75" cy="96" r="52" className="line" />
    <circle cx="75" cy="96" r="22" className="line" />
    <path className="line" d="M34 150h82v14H34z" />
    <path className="held" d="M62 164h26v12H62z" />
    <text x="75" y="196" className="say" textAnchor="middle">
      {text}
    </text>
  </>
);
export const Tube = ({ text }: Props): ReactNode => (
  <>
    <circle cx="60" cy="100" r="36" className="line" />
    <circle cx="60" cy="100" r="28" className="line" />
    <path className="thin" d="M60 64h68M60 136h68" />
    <Dimension from={[118, 64]} to={[118, 136]} text={text} />
  </>
);
export const Holes = ({ text }: Props): ReactNode => (
  <>
    <path className="line" d="M20 60h110v80H20z" />
    <Pivot x={46} y={100} held />
    <Pivot x={104} y={100} held />
    <path className="thin" d="M46 92V44M104 92V44" />
    <Dimension from={[46, 48]} to={[104, 48]} text={text} />
  </>
);
export const Bend = ({ text }: Props): ReactNode => (
  <>
    <path className="line" d="M6 92h64v16H6z" />
    <g transform="rotate(20 78 100)">
      <path className="line" d="M86 92h62v16H86z" />
    </g>
    <Pivot x={78} y={100} held />
    <path className="thin centre" d="M78 100h68" />
    <g className="sketch-dimension">
      <path d="M128 100q0 9-3 17" />
      <text x="112" y="76" textAnchor="middle">
        {text}
      </text>
    </g>
  </>
);
export const Slip = ({ text, part }: Props & { readonly part: "in" | "left" }): ReactNode => (
  <>
    <path className="line" d="M4 88h70v24H4z" />
    <path className="line" d="M40 92h106v16H40z" />
    <path className="thin" d="M40 97h34M40 103h34" />
    <path className="thin" d={part === "in" ? "M40 112v34M74 112v34" : "M10 112v34M40 112v34"} />
    <Dimension from={[part === "in" ? 40 : 10, 140]} to={[part === "in" ? 74 : 40, 140]} text={text} at={[75, 166]} />
  </>
);
export const Gap = ({ text }: Props): ReactNode => (
  <>
    <rect x="70" y="30" width="74" height="130" className="kept-out" />
    <path className="line" d="M6 170L36 34" />
    <path className="thin" d="M70 20v20" />
    <Dimension from={[26, 92]} to={[70, 92]} text={text} at={[48, 72]} />
  </>
);

/** A shock's eye between its two tabs, seen along the car: how wide it is, or how far apart the tabs stand. */
export const EyeInTabs = ({ text, isGap }: Props & { readonly isGap: boolean }): ReactNode => (
  <>
    <path className="line" d="M28 40H122M36 40v74h9V40M105 40v74h9V40" />
    <path className="line" d="M51 70h48v30H51ZM64 100v72M86 100v72" />
    <path className="thin centre" d="M22 85H128" />
    {isGap ? (
      <>
        <path className="thin" d="M45 114v24M105 114v24" />
        <Dimension from={[45, 132]} to={[105, 132]} text={text} at={[75, 150]} />
      </>
    ) : (
      <>
        <path className="thin" d="M51 70V52M99 70V52" />
        <Dimension from={[51, 56]} to={[99, 56]} text={text} at={[75, 24]} />
      </>
    )}
  </>
);
