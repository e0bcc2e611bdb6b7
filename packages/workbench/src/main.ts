import { fetchSurvey, withSurvey } from "virtual:survey-later";
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
import { registerOffline } from "./offline/register.ts";
import { offerNewer } from "./store/bench.ts";
import { connect } from "./store/connection.ts";
import { bringDemo } from "./store/demo.ts";
import { warmUp } from "./store/warm-up.ts";
import { chooseSource } from "./sync/choose-source.ts";

forbidEval();
addDrawingStyles();
addHatches(document.body);
void start();

async function start(): Promise<void> {
  const chosen = await chooseSource();
  if (!chosen.ok) {
    location.assign(chosen.goTo);
    return;
  }
  const { source } = chosen;
  if (source.kind === "browser") await withSurvey(() => bringDemo(source));
  await connect(source, withSurvey);
  const root = document.getElementById("app");
  if (!root) throw new Error("bug in the page: it has no place for the bench");
  paintFirst(root);
  // The rest is fetched once the car can be seen.
  await shown();
  performance.mark("armwright-first-paint");
  const { fetchPanels, mount } = await import("./app/mount.tsx");
  mount(root);
  void fetchSurvey();
  setTimeout(fetchPanels, 1500);
  setTimeout(warmUp, 400);
  await registerOffline((takeOver) => offerNewer(takeOver));
}

/** The reader of documents would try to compile code of its own, which the page's policy refuses and reports. */
function forbidEval(): void {
  const holder = globalThis as { __zod_globalConfig?: { jitless?: boolean } };
  holder.__zod_globalConfig = Object.assign(holder.__zod_globalConfig ?? {}, { jitless: true });
}

const shown = (): Promise<void> => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
