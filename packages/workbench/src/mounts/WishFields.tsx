import { COMMON_REQUIREMENTS, COMMON_RESERVE, type MountRequirements } from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { Reading } from "../words/Reading.tsx";
import { shown, shownLength } from "../words/shown.ts";
import { STEPS_OF_GRID, useMounts, wish } from "./mounts-store.ts";
import { carTravel } from "./request-now.ts";
import { useRestingStudy } from "./use-resting-study.ts";
import { ValueEntry } from "./ValueEntry.tsx";

/** What the shock has to do: travel, reserves, windows. What nobody has changed is marked as common practice. */
export function WishFields(): ReactNode {
  const study = useRestingStudy();
  const units = useBench((state) => state.units);
  const { travel, reserve, requirements, step } = useMounts((state) => state);
  if (!study) return null;
  const wanted = travel ?? carTravel(study);
  const need = (part: Partial<MountRequirements>): void => wish({ requirements: { ...requirements, ...part } });
  const note = (isCommon: boolean) => (isCommon ? { note: "common practice" } : {});
  const usual = COMMON_REQUIREMENTS;
  const { strokeUsed, motionRatio } = requirements;
  return (
    <fieldset className="finder-part">
      <legend>What it has to do</legend>
      <div className="two-wide">
        <ValueEntry
          label="Wanted bump"
          value={wanted.bump}
          least={0.001}
          {...(travel === null && { note: "the car's stop" })}
          onEnter={(bump) => wish({ travel: { ...wanted, bump } })}
        />
        <ValueEntry
          label="Wanted droop"
          value={-wanted.droop}
          least={0.001}
          {...(travel === null && { note: "the car's stop" })}
          onEnter={(droop) => wish({ travel: { ...wanted, droop: -droop } })}
        />
        <ValueEntry
          label="Shaft left at full bump"
          value={reserve.bump}
          least={0}
          {...note(reserve.bump === COMMON_RESERVE.bump)}
          onEnter={(bump) => wish({ reserve: { ...reserve, bump } })}
        />
        <ValueEntry
          label="Shaft left at full droop"
          value={reserve.droop}
          least={0}
          {...note(reserve.droop === COMMON_RESERVE.droop)}
          onEnter={(droop) => wish({ reserve: { ...reserve, droop } })}
        />
        <ValueEntry
          label="Stroke used, at least"
          dimension="percent"
          value={strokeUsed.least}
          least={0}
          {...note(strokeUsed.least === usual.strokeUsed.least)}
          onEnter={(least) => need({ strokeUsed: { ...strokeUsed, least: Math.min(least, strokeUsed.most) } })}
        />
        <ValueEntry
          label="Stroke used, at most"
          dimension="percent"
          value={strokeUsed.most}
          least={0}
          {...note(strokeUsed.most === usual.strokeUsed.most)}
          onEnter={(most) => need({ strokeUsed: { ...strokeUsed, most: Math.max(most, strokeUsed.least) } })}
        />
        <ValueEntry
          label="Motion ratio at ride, at least"
          dimension="ratio"
          value={motionRatio.least}
          least={0}
          {...note(motionRatio.least === usual.motionRatio.least)}
          onEnter={(least) => need({ motionRatio: { ...motionRatio, least: Math.min(least, motionRatio.most) } })}
        />
        <ValueEntry
          label="Motion ratio at ride, at most"
          dimension="ratio"
          value={motionRatio.most}
          least={0}
          {...note(motionRatio.most === usual.motionRatio.most)}
          onEnter={(most) => need({ motionRatio: { ...motionRatio, most: Math.max(most, motionRatio.least) } })}
        />
        <ValueEntry
          label="It may fall to bump by"
          dimension="ratio"
          value={requirements.mayFall}
          {...note(requirements.mayFall === usual.mayFall)}
          onEnter={(mayFall) => need({ mayFall })}
        />
        <ValueEntry
          label="Lean, at most"
          dimension="angle"
          value={requirements.lean}
          least={0}
          {...note(requirements.lean === usual.lean)}
          onEnter={(lean) => need({ lean })}
        />
        <ValueEntry
          label="Off square at bump, at most"
          dimension="angle"
          value={requirements.offSquareAtBump ?? Math.PI / 2}
          least={0}
          {...(requirements.offSquareAtBump === undefined && { note: "anything" })}
          onEnter={(offSquareAtBump) => need({ offSquareAtBump })}
        />
        <ValueEntry
          label="Clear of metal by"
          value={requirements.toMetal}
          least={0}
          {...note(requirements.toMetal === usual.toMetal)}
          onEnter={(toMetal) => need({ toMetal })}
        />
        <ValueEntry
          label="Clear of the tyre by"
          value={requirements.toTyre}
          least={0}
          {...note(requirements.toTyre === usual.toTyre)}
          onEnter={(toTyre) => need({ toTyre })}
        />
      </div>
      {usual.wrench && (
        <label className="pick">
          <input
            type="checkbox"
            checked={requirements.wrench !== undefined}
            onChange={() => {
              const { wrench, ...others } = requirements;
              wish({ requirements: wrench ? others : { ...others, wrench: usual.wrench! } });
            }}
          />
          <span>room for a wrench at both bolts</span>
          <span className="quiet small">
            <Reading text={`${shown(2 * usual.wrench.radius, "length", units)} socket, common practice`} />
          </span>
        </label>
      )}
      <fieldset className="grid-steps">
        <legend className="quiet small">Places tried every</legend>
        {STEPS_OF_GRID.map((each) => (
          <label key={each} className={Math.abs(each - step) < 1e-9 ? "on" : undefined}>
            <input
              type="radio"
              name="mounts-step"
              className="unseen"
              checked={Math.abs(each - step) < 1e-9}
              onChange={() => wish({ step: each })}
            />
            <Reading text={shownLength(each, units)} />
          </label>
        ))}
      </fieldset>
    </fieldset>
  );
}
