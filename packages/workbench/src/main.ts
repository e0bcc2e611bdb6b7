import "./styles/tokens.css";
import "./styles/base.css";
import "./styles/board.css";
import "./styles/bench.css";
import "./styles/forms.css";
import "./styles/panels.css";
import "./styles/phone.css";
import "./styles/touch.css";
import "./styles/book.css";
import "./styles/work.css";
import "./styles/print.css";
import { addDrawingStyles } from "./board/drawing-styles.ts";
import { addHatches } from "./board/hatches.ts";
import { paintFirst } from "./first-paint.ts";
import { firstCar } from "./store/first-car.ts";
import { lastCar } from "./store/last-car.ts";

forbidEval();
addDrawingStyles();
addHatches(document.body);
void start();

async function start(): Promise<void> {
  const root = document.getElementById("app");
  if (!root) throw new Error("bug in the page: it has no place for the bench");
  const first = await firstCar(lastCar());
  if (first && paintFirst(root, first.car)) {
    // The rest is fetched once the car can be seen.
    await shown();
    performance.mark("armwright-first-paint");
  }
  const { openBench } = await import("./open-bench.ts");
  await openBench(root);
}

/** The reader of documents would try to compile code of its own, which the page's policy refuses and reports. */
function forbidEval(): void {
  const holder = globalThis as { __zod_globalConfig?: { jitless?: boolean } };
  holder.__zod_globalConfig = Object.assign(holder.__zod_globalConfig ?? {}, { jitless: true });
}

const shown = (): Promise<void> => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
