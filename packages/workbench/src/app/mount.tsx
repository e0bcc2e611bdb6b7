import schema from "virtual:car-schema";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { formsFrom, placeName } from "../form/schema-fields.ts";
import { bench } from "../store/bench.ts";
import { nameFieldsBy } from "../store/connection.ts";

export { fetchPanels } from "./Panels.tsx";

import { App } from "./App.tsx";

/** Puts the bench on the page, in place of whatever was painted before it. */
export function mount(root: HTMLElement): void {
  formsFrom(schema);
  nameFieldsBy((path) => placeName(path, bench.getState().document));
  createRoot(root).render(
    <StrictMode>
      <App />
    </StrictMode>,
  );
  // A car without a scan never needs what reads one.
  void import("../mesh/follow.ts").then(({ followMesh }) => followMesh());
}
