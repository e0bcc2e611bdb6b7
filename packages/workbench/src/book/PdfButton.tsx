import { type ReactNode, useState } from "react";
import { bookFile, type Paper } from "./book-calls.ts";

/** Makes the whole book and puts it among the downloads; tells when it is made, since from then on it counts as printed. */
export function PdfButton({
  name,
  file,
  paper,
  onMade,
}: {
  readonly name: string;
  readonly file: string;
  readonly paper: Paper;
  readonly onMade: () => void;
}): ReactNode {
  const [state, setState] = useState<"rests" | "makes" | { readonly failed: string }>("rests");
  const make = async (): Promise<void> => {
    setState("makes");
    const made = await bookFile(name, file, paper);
    if (typeof made === "string") {
      setState({ failed: made });
      return;
    }
    const link = document.createElement("a");
    link.href = URL.createObjectURL(made);
    link.download = file;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
    setState("rests");
    onMade();
  };
  return (
    <>
      <button type="button" className="pressable book-pdf" disabled={state === "makes"} onClick={() => void make()}>
        {state === "makes" ? "The book is being made …" : "Get the whole book (PDF)"}
      </button>
      {typeof state === "object" && <p role="alert">{state.failed}.</p>}
    </>
  );
}
