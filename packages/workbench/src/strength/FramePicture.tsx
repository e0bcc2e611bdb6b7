import { drawArm, percent, USE_LOOKS, type UseClass } from "@armwright/drawing";
import { type ArmCheck, armWords, type StrengthStudy } from "@armwright/engine";
import { type ReactNode, useEffect, useId, useLayoutEffect, useMemo, useRef } from "react";
import { useBench } from "../app/use-bench.ts";
import { laidOver } from "../board/laid-over.ts";
import { paint } from "../board/paint.ts";
import { useSize } from "../board/use-size.ts";
import { capital } from "../form/schema-fields.ts";
import { shownFigures } from "../words/three-figures.ts";
import { armsInSpace, bentNow, caseOf, frameGrips } from "./arm-now.ts";
import { showCase, useStrength } from "./strength-store.ts";

/** Each arm bent under a load case, every piece by how much it is asked; the same lies over the car in space. */
export function FramePicture({ found }: { readonly found: StrengthStudy }): ReactNode {
  const chosen = useStrength((state) => state.chosen);
  useEffect(() => {
    laidOver.setState({
      inSpace: (study, { position }) => ({
        armFrame: armsInSpace(found, chosen, position),
        moreGrips: frameGrips(study.car),
      }),
    });
    return () => laidOver.setState({ inSpace: null });
  }, [found, chosen]);
  return found.arms.map((arm) => <OneArm key={arm.frame.arm} arm={arm} chosen={chosen} />);
}

const WORDS: Readonly<Record<UseClass, string>> = {
  little: "up to 50 %",
  half: "to 80 %",
  most: "to 100 %",
  over: "over 100 %: gives way",
};

function OneArm({ arm, chosen }: { readonly arm: ArmCheck; readonly chosen: string | null }): ReactNode {
  const units = useBench((state) => state.units);
  const [box, size] = useSize();
  const ink = useRef<SVGGElement>(null);
  const id = useId();
  const width = size ? Math.floor(size.width) : 0;
  const height = Math.min(260, Math.max(180, Math.round(width * 0.5)));
  const bent = useMemo(() => bentNow(arm, chosen), [arm, chosen]);
  useLayoutEffect(() => {
    if (ink.current && bent && width > 0) paint(ink.current, drawArm(bent, width, height), 1);
  }, [bent, width, height]);
  const { analysis, frame } = arm;
  const name = capital(armWords(frame.arm));
  if (!analysis.ok || !bent) {
    return <p>{name}: as a frame it cannot be reckoned, for some of it moves freely or hangs on nothing.</p>;
  }
  const loadCase = caseOf(arm, chosen) ?? "";
  const worst = bent.nodes.reduce((most, node) => (node.use > most.use ? node : most));
  return (
    <>
      <h3>
        {name} under load <small>how much of what it may bear each piece is asked</small>
      </h3>
      <p className="case-choice">
        <label htmlFor={id}>in the case</label>
        <select id={id} value={loadCase} onChange={(event) => showCase(event.target.value)}>
          {analysis.cases.map((each) => (
            <option key={each.loadCase} value={each.loadCase}>
              {each.loadCase}
            </option>
          ))}
        </select>
      </p>
      <div ref={box} className="arm-picture">
        <svg
          width={width}
          height={height}
          viewBox={`0 0 ${width} ${height}`}
          role="img"
          aria-label={`${name} in ${loadCase}: most at ${worst.label}, ${percent(worst.use)} percent of what it may bear`}
        >
          {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in a painted drawing takes the keyboard. */}
          <g ref={ink} aria-hidden="true" />
        </svg>
      </div>
      <ul className="use-key small">
        {(Object.keys(USE_LOOKS) as UseClass[]).map((each) => (
          <li key={each}>
            <svg width="30" height="12" viewBox="0 0 30 12" aria-hidden="true">
              <path className={`d-line i-${USE_LOOKS[each].ink} key-${USE_LOOKS[each].weight}`} d="M1 6h28" />
            </svg>
            {WORDS[each]}
          </li>
        ))}
      </ul>
      <p className="small">
        {frame.isAssumed ? "A starting frame made from the car’s points. " : "Your own frame. "}
        Bending drawn {bent.times === 1 ? "as large as it is" : `${bent.times} times as large as it is`}: most at{" "}
        {bent.farthest.label}, {shownDecimal(bent.farthest.shift, units)}, against its inner pivots and its far end,
        which are held.
      </p>
    </>
  );
}

/** A bending is no tape reading: three figures with its unit. */
const shownDecimal = (metres: number, units: Parameters<typeof shownFigures>[2]): string =>
  shownFigures(metres, "length", units);
