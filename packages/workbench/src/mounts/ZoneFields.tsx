import type { ArmId, LowerZone, Study, UpperZone, Vec3 } from "@armwright/engine";
import type { ReactNode } from "react";
import { type MountsBench, useMounts, wish } from "./mounts-store.ts";
import { useRestingStudy } from "./use-resting-study.ts";
import { ValueEntry } from "./ValueEntry.tsx";
import { ordered } from "./zone.ts";

const INCH = 0.0254;
/** A tab outboard of a tube, the eye clear of it by half an inch: common practice, no source. */
const CLEAR = 0.5 * INCH;
/** Half of a box that is begun round a point. */
const HALF: Vec3 = { x: 2 * INCH, y: 2 * INCH, z: 1.5 * INCH };

/** Where either mount may be: typed here, or dragged in the drawing. */
export function ZoneFields(): ReactNode {
  const study = useRestingStudy();
  const zones = useMounts((state) => state.zones);
  if (!study || !zones) return null;
  const { lower } = zones;
  const setLower = (next: readonly LowerZone[]): void => wish({ zones: { ...zones, lower: next } });
  const tubes = study.corner.members.filter(({ body }) => body !== "link");
  return (
    <fieldset className="finder-part">
      <legend>Where it may be bolted</legend>
      <p className="small quiet">Drag the bracketed boxes in the drawing, or type.</p>
      <Upper study={study} zones={zones} />
      <h4>Lower mount</h4>
      {tubes.map(({ id, label, diameter }) => {
        const index = lower.findIndex((zone) => zone.kind === "tube" && zone.member === id);
        const zone = lower[index];
        return (
          <div key={id}>
            <label className="pick">
              <input
                type="checkbox"
                checked={index >= 0}
                onChange={() =>
                  setLower(
                    index >= 0
                      ? lower.filter((_, i) => i !== index)
                      : [...lower, { kind: "tube", member: id, standoff: diameter / 2 + CLEAR, from: 0.15, to: 0.95 }],
                  )
                }
              />
              <span>along the {label}</span>
            </label>
            {zone?.kind === "tube" && (
              <div className="three">
                <ValueEntry
                  label="from"
                  name={`${label}: from, of its length`}
                  dimension="percent"
                  value={zone.from}
                  least={0}
                  onEnter={(from) => setLower(replaced(lower, index, { ...zone, from: Math.min(from, zone.to) }))}
                />
                <ValueEntry
                  label="to"
                  name={`${label}: to, of its length`}
                  dimension="percent"
                  value={zone.to}
                  least={0}
                  onEnter={(to) =>
                    setLower(replaced(lower, index, { ...zone, to: Math.min(1, Math.max(to, zone.from)) }))
                  }
                />
                <ValueEntry
                  label="over its middle"
                  name={`${label}: eye over the tube's middle`}
                  value={zone.standoff}
                  onEnter={(standoff) => setLower(replaced(lower, index, { ...zone, standoff }))}
                />
              </div>
            )}
          </div>
        );
      })}
      {lower.map((zone, index) =>
        zone.kind === "box" ? (
          // biome-ignore lint/suspicious/noArrayIndexKey: zones are told apart by their place only.
          <div key={index}>
            <label className="pick">
              <input type="checkbox" checked onChange={() => setLower(lower.filter((_, i) => i !== index))} />
              <span>in a box on the {bodyName(zone.on)}</span>
            </label>
            <BoxFields
              name={`lower mount, on the ${bodyName(zone.on)}`}
              box={zone}
              onEnter={(box) => setLower(replaced(lower, index, { ...zone, ...box }))}
            />
          </div>
        ) : null,
      )}
      <p className="adders">
        {carriers(study).map((on) => (
          <button key={on} type="button" className="pressable" onClick={() => setLower([...lower, boxOn(study, on)])}>
            A box on the {bodyName(on)}
          </button>
        ))}
      </p>
    </fieldset>
  );
}

function Upper({
  study,
  zones,
}: {
  readonly study: Study;
  readonly zones: NonNullable<MountsBench["zones"]>;
}): ReactNode {
  const { upper } = zones;
  const setUpper = (next: UpperZone): void => wish({ zones: { ...zones, upper: next } });
  const tubes = study.car.keepOuts.filter(({ shape }) => shape === "tube");
  const choose = (name: string): void => {
    const tube = tubes.find((each) => each.name === name);
    if (tube?.shape === "tube")
      setUpper({ kind: "tube", keepOut: name, standoff: { x: 0, y: tube.diameter / 2 + CLEAR, z: 0 } });
    else setUpper(boxAround(study));
  };
  return (
    <>
      <label className="field">
        <span>Upper mount</span>
        <span className="entry">
          <select value={upper.kind === "tube" ? upper.keepOut : ""} onChange={(event) => choose(event.target.value)}>
            <option value="">in a box</option>
            {tubes.map(({ name }) => (
              <option key={name} value={name}>
                along the {name}
              </option>
            ))}
          </select>
        </span>
      </label>
      {upper.kind === "box" ? (
        <BoxFields name="upper mount" box={upper} onEnter={(box) => setUpper({ kind: "box", ...box })} />
      ) : (
        <div className="three">
          {AXES.map(([axis, word]) => (
            <ValueEntry
              key={axis}
              label={`eye ${word}`}
              name={`upper mount, eye ${word} of the tube's middle`}
              value={upper.standoff[axis]}
              onEnter={(value) => setUpper({ ...upper, standoff: { ...upper.standoff, [axis]: value } })}
            />
          ))}
        </div>
      )}
    </>
  );
}

const AXES = [
  ["x", "forward"],
  ["y", "out"],
  ["z", "up"],
] as const;

interface Corners {
  readonly from: Vec3;
  readonly to: Vec3;
}

function BoxFields({
  name,
  box,
  onEnter,
}: {
  readonly name: string;
  readonly box: Corners;
  readonly onEnter: (box: Corners) => void;
}): ReactNode {
  const { low, high } = ordered(box.from, box.to);
  return (
    <>
      {(
        [
          ["from", low],
          ["to", high],
        ] as const
      ).map(([end, point]) => (
        <div className="three" key={end}>
          {AXES.map(([axis, word]) => (
            <ValueEntry
              key={axis}
              label={`${word}, ${end}`}
              name={`zone of the ${name}: ${word}, ${end}`}
              value={point[axis]}
              onEnter={(value) => onEnter({ from: low, to: high, [end]: { ...point, [axis]: value } })}
            />
          ))}
        </div>
      ))}
    </>
  );
}

const replaced = (zones: readonly LowerZone[], index: number, by: LowerZone): readonly LowerZone[] =>
  zones.map((zone, i) => (i === index ? by : zone));

const bodyName = (on: string): string => on.replace("-", " ");

const carriers = ({ corner }: Study): readonly (ArmId | "spindle")[] => [
  ...corner.arms.map(({ body }) => body),
  ...(corner.car.linkage.kind === "trailing-arm" ? [] : (["spindle"] as const)),
];

/** Round the present mount, or round the first pivot of the body. */
function boxOn({ corner, car }: Study, on: ArmId | "spindle"): LowerZone {
  const pivot = corner.pivots.find(({ boltSide }) => boltSide === on) ?? corner.pivots[0];
  const middle = car.shock?.lower.on === on ? car.shock.lower.point : (pivot?.point ?? corner.wheelCentre);
  return { kind: "box", on, ...around(middle, HALF) };
}

function boxAround({ car, corner }: Study): UpperZone {
  const middle = car.shock?.upper.point ?? { ...corner.wheelCentre, z: corner.wheelCentre.z + 20 * INCH };
  return { kind: "box", ...around(middle, { x: 8 * INCH, y: 5 * INCH, z: 6 * INCH }) };
}

const around = ({ x, y, z }: Vec3, half: Vec3): Corners => ({
  from: { x: x - half.x, y: y - half.y, z: z - half.z },
  to: { x: x + half.x, y: y + half.y, z: z + half.z },
});
