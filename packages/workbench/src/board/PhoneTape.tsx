import type { Study } from "@armwright/engine";
import type { ReactNode } from "react";
import { Tape } from "./Tape.tsx";
import { useSize } from "./use-size.ts";

/** The tape without words, for a thumb. */
export function PhoneTape({ study }: { readonly study: Study }): ReactNode {
  const [ref, size] = useSize();
  return (
    <div ref={ref} className="phone-tape">
      {size && (
        <Tape study={study} width={size.width} height={size.height} bladeWidth={44} loupe={false} words={false} />
      )}
    </div>
  );
}
