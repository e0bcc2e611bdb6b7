import type { ReactNode } from "react";

/** What the sheet's numbers are not: always in view, at the sheet's foot. */
export function Cautions({ short, long }: { readonly short: string; readonly long: string }): ReactNode {
  return (
    <p className="cautions small">
      <b>{short}</b> <span>{long}</span>
    </p>
  );
}
