import { fetchSurvey } from "virtual:survey-later";
import type { CarSurvey } from "@armwright/engine";
import { readSurvey } from "@armwright/engine/document";
import { useEffect, useMemo, useState } from "react";
import { useSettledDocument } from "../app/use-settled.ts";

/** The survey on the bench, solved, also where the rest of the document makes no car yet; null where there is none. */
export function useSurvey(): CarSurvey | null {
  const document = useSettledDocument();
  const [isFetched, setFetched] = useState(false);
  useEffect(() => {
    void fetchSurvey().then(() => setFetched(true));
  }, []);
  return useMemo(() => {
    if (!document || !isFetched) return null;
    return readSurvey(JSON.stringify(document))?.survey ?? null;
  }, [document, isFetched]);
}
