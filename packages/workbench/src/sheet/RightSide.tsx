import { type FieldValue, valueAt } from "@armwright/engine/document";
import type { ReactNode } from "react";
import { useBench } from "../app/use-bench.ts";
import { placeName } from "../form/schema-fields.ts";
import type { Step } from "../steps/steps.ts";
import { edit, setSide } from "../store/bench.ts";
import { mirrored, RIGHT_SECTIONS, type RightSection } from "../store/sides.ts";

/** Whether the right side mirrors the left one in what this step enters, and the way to one of its own and back. */
export function RightSide({ step }: { readonly step: Step }): ReactNode {
  const document = useBench((state) => state.document);
  const side = useBench((state) => state.side);
  if (!document) return null;
  const sections = RIGHT_SECTIONS.filter(
    (section) =>
      valueAt(document, [section]) !== undefined &&
      step.places.some((place) => place === section || place.startsWith(`${section}.`)),
  );
  if (sections.length === 0) return null;
  const isOwn = (section: RightSection): boolean => document.right?.[section] !== undefined;
  const name = (section: RightSection): string => placeName(section, document).toLowerCase();
  const differ = (section: RightSection): void => {
    edit(
      [{ path: `right.${section}`, value: mirrored(valueAt(document, [section]) as FieldValue) }],
      `the right side has its own ${name(section)}, so far the left one's mirror image`,
    );
    setSide("right");
  };
  const mirror = (section: RightSection): void => {
    const isLast = RIGHT_SECTIONS.every((each) => each === section || !isOwn(each));
    edit(
      [{ path: isLast ? "right" : `right.${section}`, value: undefined }],
      `${name(section)}: the right side mirrors the left again`,
    );
  };
  return (
    <section className="right-side" aria-label="Left and right">
      <h3>Left and right</h3>
      {sections.map((section) => (
        <p key={section} className="small">
          <span>
            {isOwn(section)
              ? `The right side has its own ${name(section)}.`
              : `The right side mirrors the left: ${name(section)}.`}
          </span>
          <button
            type="button"
            className="pressable"
            onClick={() => (isOwn(section) ? mirror(section) : differ(section))}
          >
            {isOwn(section) ? "Mirror the left again" : "The right side differs"}
            <span className="unseen">: {name(section)}</span>
          </button>
        </p>
      ))}
      {document.right !== undefined && (
        <p className="small">
          <span>
            {side === "left"
              ? "Shown and edited here: the left side."
              : "Shown and edited here: the right side, drawn as a left one, so that inboard stays inboard. What it has not of its own is the left one's."}
          </span>
          <button type="button" className="pressable" onClick={() => setSide(side === "left" ? "right" : "left")}>
            {side === "left" ? "To the right side" : "To the left side"}
          </button>
        </p>
      )}
    </section>
  );
}
