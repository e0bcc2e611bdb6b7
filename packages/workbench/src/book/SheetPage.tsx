import { type ReactNode, useEffect, useState } from "react";
import { sheetText } from "./book-calls.ts";
import { linesOfSvg } from "./lines-of-svg.ts";

/** One sheet of the book as it will be printed, to leaf through; its words can be read and copied too. */
export function SheetPage({
  sheets,
  at,
  address,
  onTurn,
}: {
  readonly sheets: readonly { readonly id: string; readonly title: string }[];
  readonly at: number;
  readonly address: string;
  readonly onTurn: (to: number) => void;
}): ReactNode {
  const sheet = sheets[at];
  if (!sheet) return null;
  const turn = (by: number): void => onTurn(Math.min(Math.max(at + by, 0), sheets.length - 1));
  return (
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
            onChange={(event) => onTurn(sheets.findIndex(({ id }) => id === event.target.value))}
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
      <img src={address} alt={`Sheet ${at + 1}: ${sheet.title}. Its words are below the picture.`} />
      <SheetWords address={address} />
    </div>
  );
}

/** The words of a sheet, line by line, fetched when they are wanted. */
function SheetWords({ address }: { readonly address: string }): ReactNode {
  const [isOpen, setIsOpen] = useState(false);
  const [found, setFound] = useState<{ readonly of: string; readonly words: string } | null>(null);
  useEffect(() => {
    if (!isOpen) return;
    let isCurrent = true;
    sheetText(address).then(
      (svg) => isCurrent && setFound({ of: address, words: linesOfSvg(svg).join("\n") }),
      () => isCurrent && setFound({ of: address, words: "The server is out of reach." }),
    );
    return () => {
      isCurrent = false;
    };
  }, [address, isOpen]);
  return (
    <details onToggle={(event) => setIsOpen(event.currentTarget.open)}>
      <summary className="pressable">The words of this sheet</summary>
      <pre className="sheet-words">{found?.of === address ? found.words : isOpen ? "…" : ""}</pre>
    </details>
  );
}
