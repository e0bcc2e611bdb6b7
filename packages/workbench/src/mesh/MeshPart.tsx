import { type ChangeEvent, type ReactNode, useId } from "react";
import { useBench } from "../app/use-bench.ts";
import { QuantityField } from "../form/QuantityField.tsx";
import { type Field, fieldAt } from "../form/schema-fields.ts";
import { showScene } from "../store/bench.ts";
import { chooseMesh, placeByDrafts, setPicking, takeMeshOff, whyNotPlaced } from "./choose-mesh.ts";
import { MeshGaps } from "./MeshGaps.tsx";
import { DraftSpot, StoredSpots } from "./MeshSpots.tsx";
import { useMesh } from "./mesh-store.ts";

/** A scan of the chassis: chosen, placed by spots known on both, and what comes near it. */
export function MeshPart(): ReactNode {
  const { file, mesh, isReading, trouble } = useMesh((state) => state);
  const document = useBench((state) => state.document);
  const id = useId();
  const stored = document?.chassisMesh;
  const clearance: Field | undefined = document && stored ? fieldAt("chassisMesh.clearance", document) : undefined;
  const chosen = (event: ChangeEvent<HTMLInputElement>): void => {
    const picked = event.target.files?.[0];
    event.target.value = "";
    if (picked) void chooseMesh(picked);
  };
  return (
    <section className="mesh-part" aria-label="Scan of the chassis">
      <h3>Scan of the chassis</h3>
      {file === null && stored === undefined && (
        <p className="small quiet">A scan or model of the frame, to see what comes near it. None chosen.</p>
      )}
      {mesh && (
        <p className="small">
          {file}, {mesh.read.triangles.toLocaleString("en")} triangles{stored ? "" : ", not placed yet"}
        </p>
      )}
      <p className="adders">
        <label className="pressable file-choice" htmlFor={id}>
          {file === null ? "Choose a file" : "Choose another file"} <span className="quiet small">STL, OBJ or GLB</span>
        </label>
        <input id={id} type="file" className="unseen" accept=".stl,.obj,.glb" data-mesh-file onChange={chosen} />
        {file !== null && (
          <button type="button" className="pressable quiet" onClick={takeMeshOff}>
            Take the scan off
          </button>
        )}
      </p>
      <p className="small" aria-live="polite">
        {isReading && "The scan is being read."}
        {trouble !== "" && <span className="fault">{trouble}</span>}
      </p>
      {mesh && <Placing />}
      {clearance && <QuantityField field={{ ...clearance, group: "", label: "Gap wanted round it" }} />}
      {stored && <StoredSpots points={stored.points} />}
      {stored && mesh && <MeshGaps />}
    </section>
  );
}

/** Spots are touched in the scene, and typed here. */
function Placing(): ReactNode {
  const { drafts, isPicking, file } = useMesh((state) => state);
  const stored = useBench(({ document }) => document?.chassisMesh);
  const isScene = useBench((state) => state.isScene);
  const count = stored && stored.file === file ? stored.points.length : 0;
  const why = whyNotPlaced(drafts, count);
  const press = (): void => {
    if (!isScene) showScene(true);
    setPicking(!isPicking || !isScene);
  };
  return (
    <>
      {count === 0 && (
        <p className="small quiet">
          Touch three spots of it in the scene, not in one line and far from one another, and type where each lies on
          the car.
        </p>
      )}
      {drafts.map((draft, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: spots are told apart by their place in the list only.
        <DraftSpot key={index} draft={draft} index={index} number={count + index + 1} />
      ))}
      <p className="adders">
        <button type="button" className="pressable" aria-pressed={isPicking && isScene} onClick={press}>
          {isPicking && isScene ? "Touch the scan in the scene" : `Touch spot ${count + drafts.length + 1}`}
        </button>
        {drafts.length > 0 && (
          <button type="button" className="pressable" disabled={why !== null} onClick={placeByDrafts}>
            Place the scan
          </button>
        )}
      </p>
      {drafts.length > 0 && why !== null && <p className="small quiet">{why}</p>}
    </>
  );
}
