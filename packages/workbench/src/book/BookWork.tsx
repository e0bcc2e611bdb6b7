import { buyList, sayFinding } from "@armwright/engine";
import { fingerprintOf } from "@armwright/engine/document";
import { type ReactNode, useEffect, useMemo, useState } from "react";
import { useStore } from "zustand";
import { useBench } from "../app/use-bench.ts";
import { connection, hasServer } from "../store/connection.ts";
import { type BookContents, bookContents, fileAddress, type Paper, sheetAddress } from "./book-calls.ts";
import { SheetInHand } from "./SheetInHand.tsx";

/** The build book: its sheets to look through, paper to print, and whether paper in the hand still holds. */
export function BookWork(): ReactNode {
  const document = useBench((state) => state.document);
  const study = useBench(({ live, moving }) => (moving ? null : live.study));
  const print = useMemo(() => (document ? fingerprintOf(document) : ""), [document]);
  if (!document || !study) return null;
  const must = study.findings.filter(({ gravity }) => gravity === "must").length;
  return (
    <section className="book-work" aria-label="Build book">
      {must > 0 && (
        <p className="fault">
          {must === 1 ? "1 finding has" : `${must} findings have`} to be put right before anything is cut.
        </p>
      )}
      {hasServer() ? (
        <BookPaper print={print} />
      ) : (
        <p>
          Paper is made by the program on your own machine: save this car as a file, then{" "}
          <code>npx armwright book CAR</code>.
        </p>
      )}
      <SheetInHand document={document} print={print} />
      <h3>What is safe to buy now</h3>
      <table className="compare-table">
        <thead>
          <tr>
            <th scope="col">part</th>
            <th scope="col">by the design</th>
            <th scope="col">buy it when</th>
            <th scope="col">waits for</th>
          </tr>
        </thead>
        <tbody>
          {buyList(study).map(({ part, isSettled, after, findings, missing, assumed }) => (
            <tr key={part}>
              <th scope="row">{part}</th>
              <td>{isSettled ? "settled" : "wait"}</td>
              <td>{after}</td>
              <td>
                {findings[0] && sayFinding(findings[0], study.car.units).sentence}
                {findings.length === 0 && missing.length > 0 && "fields that are not entered"}
                {findings.length === 0 && missing.length === 0 && assumed.length > 0 && "values that are assumed"}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** The book as the server makes it: anew whenever the car has changed and the hand rests. */
function BookPaper({ print }: { readonly print: string }): ReactNode {
  const name = useStore(connection, (state) => state.name);
  const saved = useStore(connection, (state) => state.short);
  const units = useBench(({ document }) => document?.units);
  const [paper, setPaper] = useState<Paper>(units === "metric" ? "a4" : "letter");
  const [contents, setContents] = useState<BookContents | string | null>(null);
  const [page, setPage] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another print is another book
  useEffect(() => {
    if (name === null) return;
    let isCurrent = true;
    const wait = setTimeout(() => {
      void bookContents(name, paper).then((found) => isCurrent && setContents(found));
    }, 600);
    return () => {
      isCurrent = false;
      clearTimeout(wait);
    };
  }, [name, paper, print, saved]);
  if (name === null) return null;
  if (contents === null) return <p className="quiet">The book is being made …</p>;
  if (typeof contents === "string") return <p role="alert">{contents}.</p>;
  const { sheets, files, printed, fingerprint } = contents;
  const at = Math.min(page, sheets.length - 1);
  const sheet = sheets[at];
  const turn = (by: number): void => setPage(Math.min(Math.max(at + by, 0), sheets.length - 1));
  const last = printed[0];
  const pdf = files[0];
  return (
    <>
      <fieldset className="paper-size">
        <legend>Paper</legend>
        {(["letter", "a4"] as const).map((each) => (
          <label key={each} className="pressable">
            <input type="radio" name="paper" checked={paper === each} onChange={() => setPaper(each)} />
            {each === "letter" ? "Letter" : "A4"}
          </label>
        ))}
      </fieldset>
      {last && last.fingerprint !== fingerprint && (
        <p className="fault" role="status">
          Paper printed {last.day} from {last.fingerprint} is OUT OF DATE: the car has changed since.
        </p>
      )}
      {last && last.fingerprint === fingerprint && (
        <p role="status">
          Paper printed {last.day} still holds: made from {last.fingerprint}.
        </p>
      )}
      {sheet && (
        // biome-ignore lint/a11y/noStaticElementInteractions: the keys are a second way to the buttons within
        <div
          className="book-page"
          onKeyDown={(event) => {
            if (event.key === "PageUp" || event.key === "PageDown") {
              event.preventDefault();
              turn(event.key === "PageDown" ? 1 : -1);
            }
          }}
        >
          <div className="book-turn">
            <button type="button" className="pressable" disabled={at === 0} onClick={() => turn(-1)}>
              Before
            </button>
            <label>
              <span className="unseen">Sheet</span>
              <select
                value={sheet.id}
                onChange={(event) => setPage(sheets.findIndex(({ id }) => id === event.target.value))}
              >
                {sheets.map(({ id, title }, index) => (
                  <option key={id} value={id}>
                    {index + 1} of {sheets.length}: {title}
                  </option>
                ))}
              </select>
            </label>
            <button type="button" className="pressable" disabled={at === sheets.length - 1} onClick={() => turn(1)}>
              Next
            </button>
          </div>
          <img src={sheetAddress(name, sheet.id, paper, fingerprint)} alt={`Sheet ${at + 1}: ${sheet.title}`} />
        </div>
      )}
      {pdf && (
        <p>
          <a className="pressable book-file" href={fileAddress(name, pdf, paper)} download={pdf}>
            Get the whole book (PDF)
          </a>
        </p>
      )}
      <details>
        <summary className="pressable">Single files: {files.length - 1}</summary>
        <ul className="book-files">
          {files.slice(1).map((file) => (
            <li key={file}>
              <a className="pressable" href={fileAddress(name, file, paper)} download={file}>
                {file}
              </a>
            </li>
          ))}
        </ul>
      </details>
      <p className="small quiet">
        Print true-size sheets at 100 %, with no fitting to the page, and lay a rule on their rulers.
      </p>
    </>
  );
}
