import { type CornerForces, sayCaseNote, sayNoBalance, sayStrut } from "@armwright/engine";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { capital } from "../form/schema-fields.ts";
import { shownFigures } from "../words/three-figures.ts";
import { boundsOf, type ForcesNow, letterOf } from "./forces-now.ts";

/** What statics leaves open below this is none, N. */
const SHARED = 0.5;

/** A balance that leaves less than this over is even, N. */
const LEFT_OVER = 0.001;

/** Every force of the case where the wheel is now: joints, links, shock, stop, strap, shaft. */
export function ForceTables({ now }: { readonly now: ForcesNow }): ReactNode {
  const units = useBench((state) => state.units);
  const { balance } = now.found;
  // That a part stands in for another says nothing where it is missing itself.
  const notes = now.found.notes.filter(({ code }) => balance.ok || code !== "carrier-missing");
  return (
    <>
      {!balance.ok && <p>No balance: {sayNoBalance(balance)}.</p>}
      {notes.length > 0 && (
        <ul className="small plain">
          {notes.map((note) => {
            const words = sayCaseNote(note, units);
            return <li key={words}>{capital(words)}.</li>;
          })}
        </ul>
      )}
      {balance.ok && <Tables forces={balance.forces} />}
    </>
  );
}

function Tables({ forces }: { readonly forces: CornerForces }): ReactNode {
  const units = useBench((state) => state.units);
  const said = (newtons: number): string => shownFigures(Math.abs(newtons), "force", units);
  const { joints, links, struts, action, residual } = forces;
  const isOpen = joints.some(({ undecided }) => Math.abs(undecided) > SHARED);
  const { shaft } = action;
  return (
    <>
      <table className="compare-table forces">
        <thead>
          <tr>
            <th scope="col">joint</th>
            <th scope="col">force</th>
            <th scope="col">of it along the hinge</th>
          </tr>
        </thead>
        <tbody>
          {joints.map((joint, index) => {
            const isShared = Math.abs(joint.undecided) > SHARED;
            const [least, most] = boundsOf(joint);
            return (
              <tr key={joint.pivot} data-joint={joint.pivot}>
                <th scope="row">
                  <b className="letter">{letterOf(index)}</b> {joint.label}
                </th>
                <td>{said(least) === said(most) ? said(most) : `${bareOf(said(least))} to ${said(most)}`}</td>
                <td>{isShared ? `none to ${said(joint.undecided)}` : ""}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
      {isOpen && (
        <p className="small">
          Two rod ends on one hinge line: which of them takes the force along the line, statics cannot tell. Each
          carries from none of it to all; arrows are drawn with half. Strength is judged with all.
        </p>
      )}
      <table className="compare-table forces">
        <thead>
          <tr>
            <th scope="col">part</th>
            <th scope="col">force</th>
            <th scope="col">it is</th>
          </tr>
        </thead>
        <tbody>
          {links.map(({ member, label, tension }) => (
            <tr key={member}>
              <th scope="row">{capital(label)}</th>
              <td>{said(tension)}</td>
              <td>{tension >= 0 ? "pulled" : "pushed"}</td>
            </tr>
          ))}
          {struts.map(({ name, magnitude, isCarrier, canBe }) => (
            <tr key={name} data-strut={name}>
              <th scope="row">{capital(sayStrut(name))}</th>
              <td>{said(magnitude)}</td>
              <td>
                {(name === "strap") === magnitude >= 0 ? "pulled" : "pushed"}
                {canBe ? (isCarrier ? ", holds the wheel" : ", springs and gas there") : ", which it cannot"}
              </td>
            </tr>
          ))}
          {shaft && (
            <tr>
              <th scope="row">Half shaft</th>
              <td>{shownFigures(Math.abs(shaft.inShaft), "torque", units)}</td>
              <td>
                twisted; its bent joints press the stub aside with{" "}
                {shownFigures(Math.abs(shaft.secondary), "torque", units)}
              </td>
            </tr>
          )}
        </tbody>
      </table>
      <p className="small quiet">
        Joint forces are those on the outboard part. The balance comes out even to{" "}
        {residual < LEFT_OVER ? `less than ${LEFT_OVER} N` : `${residual.toPrecision(2)} N`}.
      </p>
    </>
  );
}

/** The number alone, where its unit follows later. */
const bareOf = (text: string): string => text.split("\u00a0")[0] ?? text;
