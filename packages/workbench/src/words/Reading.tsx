import { textParts } from "@armwright/drawing";
import { memo, type ReactNode } from "react";
import { hasFraction, spoken } from "./fractions.ts";

/** Text whose fractions are set as fractions, and read aloud as words. */
export const Reading = memo(function Reading({ text }: { readonly text: string }): ReactNode {
  if (!hasFraction(text)) return text;
  return (
    <span>
      <span aria-hidden="true">
        {textParts(text).map((part, index) =>
          part.fraction ? (
            // biome-ignore lint/suspicious/noArrayIndexKey: parts of one text have no other name.
            <span className={part.isBehindWhole ? "q behind" : "q"} key={index}>
              {part.text}
            </span>
          ) : (
            part.text
          ),
        )}
      </span>
      <span className="unseen">{spoken(text)}</span>
    </span>
  );
});
