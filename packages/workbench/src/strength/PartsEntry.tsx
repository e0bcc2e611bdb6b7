import { kindOf, type Linkage, MATERIALS, type Study } from "@armwright/engine";
import { type CarDocument, type FieldValue, formatPath, valueAt } from "@armwright/engine/document";
import type { ReactNode } from "react";
import { useSettledDocument } from "../app/use-settled.ts";
import { Fields } from "../form/Fields.tsx";
import { capital, type Field, fieldAt } from "../form/schema-fields.ts";
import { edit } from "../store/bench.ts";
import { FrameEditor } from "./FrameEditor.tsx";
import { startOfGusset } from "./start-strength.ts";

type Path = readonly string[];

/** What the parts are made of: tubes, rod ends, bolts, tabs, welds, shaft, stub and materials of the builder's own. */
export function PartsEntry({ study }: { readonly study: Study }): ReactNode {
  const document = useSettledDocument();
  if (!document?.strength) return null;
  const { linkage } = study.car;
  const members = kindOf<Linkage>(linkage).members(linkage);
  const arms = [...new Set(members.filter(({ body }) => body !== "link").map(({ id }) => id.replace(/\.[^.]*$/, "")))];
  const links = members.filter(({ body }) => body === "link");
  return (
    <>
      <h3>What they are made of</h3>
      {arms.map((arm) => (
        <Part key={arm} name={armWords(arm)} document={document} path={["tubes", arm]} names={ARM}>
          <Gusset arm={arm} study={study} document={document} />
          <SecondTube arm={arm} document={document} />
          <FrameEditor
            arm={arm.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}
            study={study}
            document={document}
          />
        </Part>
      ))}
      {links.map(({ id, label }) => (
        <Part key={id} name={label} document={document} path={["tubes", id]} names={LINK} />
      ))}
      {study.corner.pivots.map(({ id, label }) => (
        <Part key={id} name={`rod end, ${label}`} document={document} path={["rodEnds", id]} names={ROD_END} />
      ))}
      <Part name="bolts" document={document} path={["bolts", "all"]} names={["size", "grade", "shear"]} />
      <Part name="tabs" document={document} path={["tabs", "all"]} names={TAB} />
      <Part name="welds of the tabs" document={document} path={["welds", "all"]} names={["leg", "length", "filler"]} />
      {study.car.driveshaft && <Part name="half shaft" document={document} path={["shaft"]} names={SHAFT} />}
      <Part name="stub axle" document={document} path={["stub"]} names={STUB} />
      <Materials document={document} />
    </>
  );
}

const armWords = (name: string): string => name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

const ARM = ["wall", "material", "crossDiameter", "crossWall"];
const LINK = ["wall", "material", "eccentricity"];
const ROD_END = ["radial", "axial", "exposed"];
const TAB = ["count", "thickness", "width", "edgeDistance", "height", "material"];
const SHAFT = ["diameter", "bore", "material", "jointTorque"];
const STUB = ["diameter", "bore", "material", "toBearing"];

interface PartProps {
  readonly name: string;
  readonly document: CarDocument;
  readonly path: Path;
  readonly names: readonly string[];
  readonly children?: ReactNode;
}

/** What a part that is not entered yet begins with, where it cannot do without numbers. */
const BEGIN: Readonly<Record<string, readonly [FieldValue, FieldValue]>> = {
  bolts: [
    { size: "5/8-18", grade: "8", shear: "double" },
    { size: "M16x1.5", grade: "10.9", shear: "double" },
  ],
  tabs: [
    { thickness: "1/4", width: 2, edgeDistance: 1, height: "1 1/2" },
    { thickness: 6, width: 50, edgeDistance: 25, height: 40 },
  ],
  welds: [
    { leg: "3/16", length: 6 },
    { leg: 5, length: 160 },
  ],
  shaft: [
    { diameter: "1 1/8", material: "4130 N" },
    { diameter: 28, material: "4130 N" },
  ],
  stub: [
    { diameter: "1 3/4", material: "4130 N", toBearing: 2 },
    { diameter: 45, material: "4130 N", toBearing: 50 },
  ],
};

function Part({ name, document, path, names, children }: PartProps): ReactNode {
  const place = ["strength", ...path];
  const begin = BEGIN[path[0]!];
  const isThere = valueAt(document, place) !== undefined;
  const fields = names.flatMap((field): Field[] => {
    const found = fieldAt(formatPath([...place, field]), document);
    return found ? [{ ...found, group: "", label: found.label }] : [];
  });
  return (
    <details className="item">
      <summary className="pressable">
        {capital(name)} {!isThere && <span className="small quiet">not entered</span>}
      </summary>
      {!isThere && begin ? (
        <p className="adders">
          <button
            type="button"
            className="pressable"
            onClick={() =>
              edit(
                [{ path: formatPath(place), value: document.units === "metric" ? begin[1] : begin[0] }],
                `${name} begun, as a starting guess`,
              )
            }
          >
            Begin, as a starting guess
          </button>
        </p>
      ) : (
        <Fields fields={fields} />
      )}
      {children}
    </details>
  );
}

const PLACES = [
  ["bumpStop.strikes", "under the bump-stop pad"],
  ["shock.lower", "under the shock mount"],
  ["strap.lower", "under the strap tab"],
] as const;

/** A plate on edge under the arm's tube, where something lands on it. */
function Gusset({
  arm,
  study,
  document,
}: {
  readonly arm: string;
  readonly study: Study;
  readonly document: CarDocument;
}): ReactNode {
  const path = ["strength", "tubes", arm, "gusset"];
  const body = arm.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
  const { car } = study;
  const on = {
    "bumpStop.strikes": car.bumpStop?.strikes,
    "shock.lower": car.shock?.lower,
    "strap.lower": car.strap?.lower,
  };
  if (valueAt(document, path) !== undefined) {
    const fields = ["thickness", "depth", "reach"].flatMap(
      (field) => fieldAt(formatPath([...path, field]), document) ?? [],
    );
    return (
      <>
        <Fields
          fields={fields.map((field) => ({ ...field, group: "", label: `Gusset, ${field.label.toLowerCase()}` }))}
        />
        <p className="adders">
          <button
            type="button"
            className="pressable"
            onClick={() => edit([{ path: formatPath(path), value: undefined }], "gusset taken off")}
          >
            Take the gusset off
          </button>
        </p>
      </>
    );
  }
  return (
    <p className="adders">
      {PLACES.filter(([place]) => on[place]?.on === body).map(([place, words]) => (
        <button
          key={place}
          type="button"
          className="pressable"
          onClick={() =>
            edit(
              [{ path: formatPath(path), value: startOfGusset(place, document.units) }],
              `gusset ${words}, as a starting guess`,
            )
          }
        >
          Gusset {words}
        </button>
      ))}
    </p>
  );
}

/** A second tube under each of the arm's tubes that shock or stop press on. */
function SecondTube({ arm, document }: { readonly arm: string; readonly document: CarDocument }): ReactNode {
  const path = ["strength", "tubes", arm, "under"];
  const isThere = valueAt(document, path) !== undefined;
  const start =
    document.units === "metric" ? { diameter: 25, wall: 3, drop: 80 } : { diameter: 1, wall: 0.12, drop: 3 };
  const fields = ["diameter", "wall", "drop"].flatMap((field) => fieldAt(formatPath([...path, field]), document) ?? []);
  return (
    <>
      {isThere && (
        <Fields
          fields={fields.map((field) => ({ ...field, group: "", label: `Second tube, ${field.label.toLowerCase()}` }))}
        />
      )}
      <p className="adders">
        <button
          type="button"
          className="pressable"
          onClick={() =>
            edit(
              [{ path: formatPath(path), value: isThere ? undefined : start }],
              isThere ? "second tube taken off" : "second tube under the mounts, as a starting guess",
            )
          }
        >
          {isThere ? "Take the second tube off" : "Second tube under the mounts"}
        </button>
      </p>
    </>
  );
}

function Materials({ document }: { readonly document: CarDocument }): ReactNode {
  const path = ["strength", "materials"];
  const own = valueAt(document, path);
  const list: readonly FieldValue[] = Array.isArray(own) ? (own as readonly FieldValue[]) : [];
  const put = (next: readonly FieldValue[], words: string): void =>
    edit([{ path: formatPath(path), value: next.length === 0 ? undefined : next }], words);
  return (
    <details className="item">
      <summary className="pressable">Materials</summary>
      <ul className="small plain">
        {MATERIALS.map(({ name, source }) => (
          <li key={name}>
            <b>{name}</b>: {source}.
          </li>
        ))}
      </ul>
      {list.map((_, index) => {
        const fields = ["name", "yield", "ultimate", "weldedYield", "weldedUltimate", "source"].flatMap(
          (field) => fieldAt(formatPath([...path, index, field]), document) ?? [],
        );
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a list's things are told apart by their place only.
          <div key={index}>
            <Fields fields={fields} />
            <p className="adders">
              <button
                type="button"
                className="pressable"
                onClick={() =>
                  put(
                    list.filter((_each, other) => other !== index),
                    "material taken off",
                  )
                }
              >
                Take it off
              </button>
            </p>
          </div>
        );
      })}
      <p className="adders">
        <button
          type="button"
          className="pressable"
          onClick={() =>
            put(
              [
                ...list,
                document.units === "metric"
                  ? { name: "my steel", yield: 350, ultimate: 450 }
                  : { name: "my steel", yield: 50_000, ultimate: 65_000 },
              ],
              "material added, as a starting guess",
            )
          }
        >
          Add one of your own
        </button>
      </p>
    </details>
  );
}
