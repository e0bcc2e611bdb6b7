import { fetchSurvey, withSurvey } from "virtual:survey-later";
import { registerOffline } from "./offline/register.ts";
import { offerNewer } from "./store/bench.ts";
import { connect } from "./store/connection.ts";
import { bringDemo } from "./store/demo.ts";
import { followFirstCar, keepForNextTime } from "./store/keep-for-next-time.ts";
import { warmUp } from "./store/warm-up.ts";
import { chooseSource } from "./sync/choose-source.ts";

/** Everything beyond the first drawing: where the cars are kept, what reads them, and the bench to work on them. */
export async function openBench(root: HTMLElement): Promise<void> {
  const mounting = import("./app/mount.tsx");
  const chosen = await chooseSource();
  if (!chosen.ok) {
    location.assign(chosen.goTo);
    return;
  }
  const { source } = chosen;
  followFirstCar();
  if (source.kind === "browser") await withSurvey(() => bringDemo(source));
  await connect(source, withSurvey);
  const { fetchPanels, mount } = await mounting;
  mount(root);
  void fetchSurvey();
  setTimeout(fetchPanels, 1500);
  setTimeout(warmUp, 400);
  addEventListener("pagehide", keepForNextTime);
  await registerOffline((takeOver) => offerNewer(takeOver));
}
