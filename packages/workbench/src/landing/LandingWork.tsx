import { type ReactNode, useEffect } from "react";
import "../styles/strength.css";
import { useBench } from "../app/use-bench.ts";
import { laidOver } from "../board/laid-over.ts";
import { Cautions } from "../loads/Cautions.tsx";
import { EventForm } from "./EventForm.tsx";
import { LandingOver } from "./LandingOver.tsx";
import { LandingResult } from "./LandingResult.tsx";
import { landingBench, useLanding } from "./landing-store.ts";
import { inSpaceAt } from "./over-now.ts";
import { usePlayback } from "./use-playback.ts";

/** The wheel let fall or driven over something, in a worker; then played back on the car itself. */
export function LandingWork(): ReactNode {
  const study = useBench(({ live }) => live.study);
  const made = useLanding((state) => state.made);
  const time = useLanding((state) => state.time);
  const units = useBench((state) => state.units);
  usePlayback();
  useEffect(() => {
    laidOver.setState({ Over: LandingOver });
    return () => {
      laidOver.setState({ Over: null, inSpace: null });
      landingBench.setState({ isPlaying: false });
    };
  }, []);
  useEffect(() => {
    laidOver.setState({ inSpace: made ? (of, solved) => inSpaceAt(made, time, of, solved, units) : null });
  }, [made, time, units]);
  if (!study) return null;
  return (
    <section className="landing-work long-work" aria-label="Landing">
      <div className="long-body">
        <EventForm />
        {made && made.study !== study && (
          <p className="older">The car has changed since: what stands below is of the car before. Run it again.</p>
        )}
        {made && <LandingResult made={made} />}
      </div>
      <Cautions
        short="No proof of strength: a licensed engineer decides. Try it slowly and look for cracks."
        long="One axle, straight up and down: pitch, the front axle, side forces, friction, the frame’s flex and the tyre’s roll over edges are left out."
      />
    </section>
  );
}
