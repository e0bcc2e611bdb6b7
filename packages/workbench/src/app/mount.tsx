import schema from "virtual:car-schema";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { formsFrom } from "../form/schema-fields.ts";

export { fetchPanels } from "./Panels.tsx";

import { App } from "./App.tsx";

/** Puts the bench on the page, in place of whatever was painted before it. */
export function mount(root: HTMLElement): void {
  formsFrom(schema);
  createRoot(root).render(
    <StrictMode>
      <App />
    </StrictMode>,
  );
  // A car without a scan never needs what reads one.
  void import("../mesh/follow.ts").then(({ followMesh }) => followMesh());
}
