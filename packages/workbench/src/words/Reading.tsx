import type { ReactNode } from "react";
import { hasFraction, pieces, spoken } from "./fractions.ts";

/** Text whose fractions are set as fractions, and read aloud as words. */
export function Reading({ text }: { readonly text: string }): ReactNode {
  if (!hasFraction(text)) return text;
  return (
    <span>
      <span aria-hidden="true">
        {pieces(text).map((piece, index) =>
          piece.isFraction ? (
            // biome-ignore lint/suspicious/noArrayIndexKey: pieces of one text have no other name.
            <span className="q" key={index}>
              {piece.text}
            </span>
          ) : (
            piece.text
          ),
        )}
      </span>
      <span className="unseen">{spoken(text)}</span>
    </span>
  );
}
