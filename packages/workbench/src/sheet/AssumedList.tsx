import type { ReactNode } from "react";
import { goToPlace } from "../app/go-to.ts";
import { useBench } from "../app/use-bench.ts";
import { placeName } from "../form/schema-fields.ts";
import { Reading } from "../words/Reading.tsx";
import { shown } from "../words/shown.ts";

/** Every value that was not entered and was put in instead, with where it comes from. */
export function AssumedList(): ReactNode {
  const document = useBench((state) => state.document);
  const car = useBench(({ live }) => live.car);
  const units = useBench((state) => state.units);
  if (!document || !car) return null;
  if (car.assumed.length === 0) return <p>Nothing is assumed: every value is your own.</p>;
  return (
    <>
      <p className="small quiet">Put in for you: {car.assumed.length} values. Enter your own where they matter.</p>
      <ul className="assumed-list">
        {car.assumed.map(({ path, value, dimension, because }) => {
          return (
            <li key={path}>
              <button type="button" onClick={() => goToPlace(path)}>
                <span>{placeName(path, document)}</span>
                <b>
                  <Reading text={typeof value === "string" ? value : shown(value, dimension, units)} />
                </b>
                <small>{because}</small>
              </button>
            </li>
          );
        })}
      </ul>
    </>
  );
}
