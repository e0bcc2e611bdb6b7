import { defaultRequest } from "@armwright/engine";
import { type ReactNode, useEffect, useRef } from "react";
import { useStore } from "zustand";
import "../styles/mounts.css";
import { useBench } from "../app/use-bench.ts";
import { laidOver } from "../board/laid-over.ts";
import { bench } from "../store/bench.ts";
import { connection } from "../store/connection.ts";
import { keepWishes, keptWishes } from "./kept-wishes.ts";
import { lookClosely, lookCoarsely, stopLooking } from "./look-for-places.ts";
import { MountsOver } from "./MountsOver.tsx";
import { beginFor, mountsBench, openFinder, useMounts } from "./mounts-store.ts";
import { Openings } from "./Openings.tsx";
import { RegionMaps } from "./RegionMaps.tsx";
import { RuledOut } from "./RuledOut.tsx";
import { shocksOf } from "./request-now.ts";
import { ShockPicks } from "./ShockPicks.tsx";
import { ShortList } from "./ShortList.tsx";
import { WishFields } from "./WishFields.tsx";
import { counted, RULED_OUT } from "./words.ts";
import { ZoneFields } from "./ZoneFields.tsx";

/** Where the shock can go: what is asked on the one side, every answer on the other, followed live. */
export function MountFinder(): ReactNode {
  const isOpen = useMounts((state) => state.isOpen);
  const hasStudy = useBench(({ live }) => live.study !== null);
  if (!hasStudy) return null;
  if (isOpen) return <OpenFinder />;
  return (
    <section className="mounts-closed" aria-label="Places for the shock">
      <p className="adders">
        <button type="button" className="pressable" onClick={() => openFinder(true)}>
          Find places for the shock
        </button>
      </p>
      <p className="small quiet">Every place where it could be bolted is tried, over the whole travel.</p>
    </section>
  );
}

function OpenFinder(): ReactNode {
  const head = useRef<HTMLDivElement>(null);
  useEffect(() => {
    head.current?.scrollIntoView({ block: "nearest" });
  }, []);
  useZonesOfCar();
  useLiveSearch();
  useEffect(() => {
    laidOver.setState({ Over: MountsOver });
    return () => laidOver.setState({ Over: null });
  }, []);
  return (
    <section className="mount-finder" aria-label="Places for the shock">
      <div ref={head} className="finder-head">
        <h2>Places for the shock</h2>
        <Status />
        <button type="button" className="pressable" onClick={() => openFinder(false)}>
          Close<span className="unseen"> the finder</span>
        </button>
      </div>
      <div className="finder-answer">
        <Answer />
      </div>
      <div className="finder-asked">
        <ShockPicks />
        <ZoneFields />
        <WishFields />
      </div>
    </section>
  );
}

/** Zones are drawn for a car when the finder is first opened on it, and then stay where they are moved to, here and when the page is opened again. */
function useZonesOfCar(): void {
  const file = useStore(connection, ({ name }) => name);
  const kind = useBench(({ live }) => live.study?.car.linkage.kind);
  useEffect(() => {
    const { study } = bench.getState().live;
    const madeFor = `${file} ${kind}`;
    if (!study || mountsBench.getState().madeFor === madeFor) return;
    const shocks = shocksOf(study.car, mountsBench.getState());
    const kept = keptWishes(madeFor, study.corner);
    if (kept?.zones) {
      beginFor(madeFor, { ...kept, zones: kept.zones });
      return;
    }
    const { upper, lower } = defaultRequest(study.corner, shocks.slice(0, 1));
    beginFor(madeFor, { zones: { upper, lower } });
  }, [file, kind]);
  const { madeFor, chosen, zones, travel, reserve, requirements, step, isDragging } = useMounts((state) => state);
  useEffect(() => {
    if (!isDragging) keepWishes(madeFor, { chosen, zones, travel, reserve, requirements, step });
  }, [madeFor, chosen, zones, travel, reserve, requirements, step, isDragging]);
}

/** Coarsely while the hand moves, closely at rest. */
function useLiveSearch(): void {
  const study = useBench(({ live }) => live.study);
  const isMoving = useBench(({ moving }) => moving !== null);
  const { chosen, zones, travel, reserve, requirements, step, shelf, wanted, isDragging } = useMounts((state) => state);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each of these is part of what is asked.
  useEffect(() => {
    if (isMoving || isDragging) lookCoarsely();
    else void lookClosely();
  }, [study, chosen, zones, travel, reserve, requirements, step, shelf, wanted, isMoving, isDragging]);
  useEffect(() => stopLooking, []);
}

function Status(): ReactNode {
  const { running, found, trouble, isCoarse } = useMounts((state) => state);
  const isWorking = running !== null && running.what !== "coarse";
  return (
    <div className="finder-status">
      <p aria-live={isCoarse ? "off" : "polite"}>
        {trouble !== "" ? (
          <strong>{trouble}</strong>
        ) : found ? (
          <>
            <b className="count">{counted(found.fitting)}</b> of {counted(found.tested)} places fit
            {isCoarse ? <span className="quiet">, roughly, while you drag</span> : "."}
          </>
        ) : (
          "Looking for places."
        )}
      </p>
      {isWorking && (
        <p className="working">
          <progress
            max={1}
            {...(running.what === "whole" && { value: running.done })}
            aria-label={running.what === "openings" ? "Looking for the smallest change" : "Trying every place"}
          />
          <span className="small quiet">
            {running.what === "openings" ? "looking for the smallest change" : "trying every place"}
          </span>
          <button type="button" className="pressable" onClick={stopLooking}>
            Stop
          </button>
        </p>
      )}
    </div>
  );
}

function Answer(): ReactNode {
  const { found, isCoarse, trouble } = useMounts((state) => state);
  if (!found || trouble !== "") return null;
  return (
    <>
      {found.fitting > 0 && !isCoarse && <ShortList found={found} />}
      {found.fitting > 0 && <RegionMaps found={found} />}
      {found.fitting === 0 && !isCoarse && (
        <p>
          <strong>Nothing fits on this grid.</strong> What is asked cannot all be had at once.
        </p>
      )}
      {found.present && !isCoarse && (
        <p className="small">
          As the shock hangs now{" "}
          {found.present.fails === null ? "it meets every wish." : `it fails: ${RULED_OUT[found.present.fails]}.`}
        </p>
      )}
      {!isCoarse && <Openings />}
      <RuledOut found={found} />
    </>
  );
}
