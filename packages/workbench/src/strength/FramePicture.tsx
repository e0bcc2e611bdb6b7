import type { StrengthStudy } from "@armwright/engine";
import type { ReactNode } from "react";

export function FramePicture(_: { readonly found: StrengthStudy }): ReactNode {
  return null;
}
