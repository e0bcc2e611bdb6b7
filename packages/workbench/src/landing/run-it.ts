import { newestWins } from "../jobs/newest-wins.ts";
import { runJob } from "../jobs/run-job.ts";
import { bench } from "../store/bench.ts";
import { eventOf, sayEvent } from "./event-fields.ts";
import { landingBench } from "./landing-store.ts";
import { showTime } from "./use-playback.ts";

const asked = newestWins();

/** Runs the event that is set, in a worker; the landing is then at its beginning, ready to be played. */
export async function runIt(): Promise<void> {
  const { document, side, units, live } = bench.getState();
  if (!document || !live.study) return;
  const event = eventOf(landingBench.getState(), units);
  if (!event.ok) {
    landingBench.setState({ says: event.words });
    return;
  }
  const title = sayEvent(event.event, units);
  const signal = asked.begin();
  landingBench.setState({ stage: "reading the car", says: "", isPlaying: false });
  const { study } = live;
  const outcome = await runJob(
    "landing",
    { document, side, event: event.event, title },
    { signal, onProgress: (stage) => asked.isNewest(signal) && landingBench.setState({ stage }) },
  );
  // Given up, or for something newer: that one says how it stands.
  if (!asked.isNewest(signal)) return;
  if (outcome.ok) {
    landingBench.setState({ stage: null, made: { answer: outcome.answer, event: event.event, title, study } });
    // The wheel is brought to where it begins.
    showTime(0);
  } else if (outcome.why === "failed") landingBench.setState({ stage: null, says: outcome.words });
}

export function giveItUp(): void {
  asked.giveUp();
  landingBench.setState({ stage: null, says: "Given up." });
}
