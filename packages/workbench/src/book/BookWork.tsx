import { fingerprintOf } from "@armwright/engine/document";
import { type ReactNode, useEffect, useMemo, useState } from "react";
import { useStore } from "zustand";
import { useBench } from "../app/use-bench.ts";
import { showPanel } from "../store/bench.ts";
import { connection, hasServer } from "../store/connection.ts";
import { BuyTable } from "./BuyTable.tsx";
import { type BookContents, bookContents, fileAddress, type Paper, sheetAddress } from "./book-calls.ts";
import { PdfButton } from "./PdfButton.tsx";
import { PrintedList } from "./PrintedList.tsx";
import { SheetInHand } from "./SheetInHand.tsx";
import { SheetPage } from "./SheetPage.tsx";

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
      {hasServer() ? <BookPaper print={print} /> : <WithoutServer />}
      <SheetInHand document={document} print={print} />
      <BuyTable study={study} />
    </section>
  );
}

/** A page that stands alone makes no paper: the car goes to a bench that does. */
const WithoutServer = (): ReactNode => (
  <>
    <p>
      This page keeps cars in the browser and makes no paper. Take this car out as a file and bring it in at the bench
      on your own machine: its Book shows every sheet and prints them.
    </p>
    <button type="button" className="pressable" onClick={() => showPanel({ kind: "files" })}>
      To the cars: take it out as a file
    </button>
  </>
);

/** The book as the server makes it: anew whenever the car has changed and the hand rests. */
function BookPaper({ print }: { readonly print: string }): ReactNode {
  const name = useStore(connection, (state) => state.name);
  const saved = useStore(connection, (state) => state.short);
  const units = useBench(({ document }) => document?.units);
  const [paper, setPaper] = useState<Paper>(units === "metric" ? "a4" : "letter");
  const [contents, setContents] = useState<BookContents | string | null>(null);
  const [page, setPage] = useState(0);
  const [made, setMade] = useState(0);
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
  }, [name, paper, print, saved, made]);
  if (name === null) return null;
  if (contents === null) return <p className="quiet">The book is being made …</p>;
  if (typeof contents === "string") return <p role="alert">{contents}.</p>;
  const { sheets, files, printed, fingerprint } = contents;
  const at = Math.min(page, sheets.length - 1);
  const sheet = sheets[at];
  const pdf = files[0];
  return (
    <>
      <div className="book-head">
        <fieldset className="paper-size">
          <legend className="unseen">Paper</legend>
          {(["letter", "a4"] as const).map((each) => (
            <label key={each} className="pressable">
              <input type="radio" name="paper" checked={paper === each} onChange={() => setPaper(each)} />
              {each === "letter" ? "Letter" : "A4"}
            </label>
          ))}
        </fieldset>
        {pdf && <PdfButton name={name} file={pdf} paper={paper} onMade={() => setMade((count) => count + 1)} />}
      </div>
      <PrintedList printed={printed} present={fingerprint} />
      {sheet && (
        <SheetPage
          sheets={sheets}
          at={at}
          address={sheetAddress(name, sheet.id, paper, fingerprint)}
          onTurn={(to) => setPage(to)}
        />
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
