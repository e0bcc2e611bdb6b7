import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";
import { carSchema } from "./build/car-schema.ts";
import { firstCar } from "./build/first-car.ts";
import { leanThree, THREE_SOURCES } from "./build/lean-three.ts";
import { sharedWorkers } from "./build/shared-workers.ts";
import { surveyLater } from "./build/survey-later.ts";
import { offline } from "./src/offline/plugin.ts";

// The page is built from the sources of engine and drawing, so that nothing has to be compiled first.
const source = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: source("."),
  base: "./",
  resolve: {
    alias: [
      { find: /^@armwright\/engine\/document$/, replacement: source("../engine/src/document/index.ts") },
      { find: /^@armwright\/([a-z]+)$/, replacement: source("../$1/src/index.ts") },
      THREE_SOURCES,
    ],
  },
  plugins: [carSchema(), firstCar(), sharedWorkers(), surveyLater(), leanThree(), react(), offline()],
  build: {
    outDir: source("./dist/app"),
    emptyOutDir: true,
    target: "es2022",
    sourcemap: true,
    // Fonts stay files: a content security policy of 'self' then allows them.
    assetsInlineLimit: 0,
    // The scene, fetched only when asked for, is larger than the usual limit.
    chunkSizeWarningLimit: 700,
    rolldownOptions: {
      // Engine and drawing do nothing when they are loaded, so that a chunk takes from them only what it uses.
      treeshake: { moduleSideEffects: [{ test: /\/packages\/(engine|drawing)\/src\//, sideEffects: false }] },
    },
  },
});
