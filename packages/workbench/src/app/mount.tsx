import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { App } from "./App.tsx";

/** Puts the bench on the page. */
export function mount(): void {
  const root = document.getElementById("app");
  if (!root) throw new Error("bug in the page: it has no place for the bench");
  createRoot(root).render(
    <StrictMode>
      <App />
    </StrictMode>,
  );
}
