import { lazy, type ReactNode, Suspense, useEffect } from "react";
import { showPanel } from "../store/bench.ts";
import { DesktopBench } from "./DesktopBench.tsx";
import { useKeys } from "./keys.ts";
import { Notices } from "./Notices.tsx";
import { Panels } from "./Panels.tsx";
import { useBench } from "./use-bench.ts";
import { PHONE, useMedia } from "./use-media.ts";

const CertaintyWatch = lazy(() =>
  import("../certainty/CertaintyWatch.tsx").then((m) => ({ default: m.CertaintyWatch })),
);
const PhoneBench = lazy(() => import("../phone/PhoneBench.tsx").then((m) => ({ default: m.PhoneBench })));

/** The whole page: one bench, laid out for a laptop or for a phone. */
export function App(): ReactNode {
  const isPhone = useMedia(PHONE);
  const theme = useBench((state) => state.theme);
  const said = useBench((state) => state.said);
  const name = useBench(({ document }) => document?.name);
  useKeys();
  useEffect(() => {
    if (theme === "auto") delete document.documentElement.dataset["theme"];
    else document.documentElement.dataset["theme"] = theme;
  }, [theme]);
  useEffect(() => {
    document.title = name === undefined ? "Armwright" : `${name}, Armwright`;
  }, [name]);
  useEffect(() => {
    if (isPhone) showPanel(null);
  }, [isPhone]);
  return (
    <>
      {isPhone ? (
        <Suspense fallback={null}>
          <PhoneBench />
        </Suspense>
      ) : (
        <DesktopBench />
      )}
      <Suspense fallback={null}>
        <CertaintyWatch />
      </Suspense>
      <Notices />
      <Panels />
      <p className="unseen" role="status">
        {said}
      </p>
    </>
  );
}
