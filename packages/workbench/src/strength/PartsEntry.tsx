import { type ArmId, armWords, kindOf, type Linkage, MATERIALS, type Study } from "@armwright/engine";
import { type CarDocument, formatPath, valueAt } from "@armwright/engine/document";
import type { ReactNode } from "react";
import { useSettledDocument } from "../app/use-settled.ts";
import { Fields } from "../form/Fields.tsx";
import { OwnList } from "../form/OwnList.tsx";
import { capital, type Field, fieldAt } from "../form/schema-fields.ts";
import { edit } from "../store/bench.ts";
import { FrameEditor } from "./FrameEditor.tsx";
import { armEntry, MATERIAL_START, PART_STARTS, SECOND_TUBE_START, startOfGusset } from "./start-strength.ts";

type Path = readonly string[];

/** What the parts are made of: tubes, rod ends, bolts, tabs, welds, shaft, stub and materials of the builder's own. */
export function PartsEntry({ study }: { readonly study: Study }): ReactNode {
  const document = useSettledDocument();
  if (!document?.strength) return null;
  const { linkage } = study.car;
  const members = kindOf<Linkage>(linkage).members(linkage);
  // Each arm once, though it has several tubes: as the document names it, and as frames do.
  const arms = new Map(members.flatMap(({ id, body }) => (body === "link" ? [] : [[armEntry(id), body as ArmId]])));
  const links = members.filter(({ body }) => body === "link");
  return (
    <>
      <h3>What they are made of</h3>
      {[...arms].map(([entry, arm]) => (
        <Part key={arm} name={armWords(arm)} document={document} path={["tubes", entry]} names={ARM}>
          <Gusset arm={arm} entry={entry} study={study} document={document} />
          <SecondTube entry={entry} document={document} />
          <FrameEditor arm={arm} study={study} document={document} />
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

const isBegun = (part: string | undefined): part is keyof typeof PART_STARTS =>
  part !== undefined && part in PART_STARTS;

function Part({ name, document, path, names, children }: PartProps): ReactNode {
  const place = ["strength", ...path];
  const begin = isBegun(path[0]) ? PART_STARTS[path[0]] : undefined;
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
              edit([{ path: formatPath(place), value: begin[document.units] }], `${name} begun, as a starting guess`)
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
  entry,
  study,
  document,
}: {
  readonly arm: ArmId;
  readonly entry: string;
  readonly study: Study;
  readonly document: CarDocument;
}): ReactNode {
  const path = ["strength", "tubes", entry, "gusset"];
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
      {PLACES.filter(([place]) => on[place]?.on === arm).map(([place, words]) => (
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
function SecondTube({ entry, document }: { readonly entry: string; readonly document: CarDocument }): ReactNode {
  const path = ["strength", "tubes", entry, "under"];
  const isThere = valueAt(document, path) !== undefined;
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
              [{ path: formatPath(path), value: isThere ? undefined : SECOND_TUBE_START[document.units] }],
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

const MATERIAL = ["name", "yield", "ultimate", "weldedYield", "weldedUltimate", "source"];

function Materials({ document }: { readonly document: CarDocument }): ReactNode {
  const path = ["strength", "materials"];
  return (
    <OwnList
      path={path}
      title="Materials"
      document={document}
      fieldsOf={(_, index) => MATERIAL.flatMap((name) => fieldAt(formatPath([...path, index, name]), document) ?? [])}
      next={() => MATERIAL_START[document.units]}
      added="material added, as a starting guess"
    >
      <ul className="small plain">
        {MATERIALS.map(({ name, source }) => (
          <li key={name}>
            <b>{name}</b>: {source}.
          </li>
        ))}
      </ul>
    </OwnList>
  );
}
