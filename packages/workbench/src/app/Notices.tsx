import type { ReactNode } from "react";
import { useStore } from "zustand";
import { connection, seeNotices } from "../store/connection.ts";

/** What another hand did to entries of this page, or what could not be done: stays until it has been seen. */
export function Notices(): ReactNode {
  const notices = useStore(connection, (state) => state.notices);
  if (notices.length === 0) return null;
  return (
    <section className="notices" aria-label="To be seen">
      <ul>
        {notices.map((words, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the same may be said twice, and notices have no other name.
          <li key={index}>{words}</li>
        ))}
      </ul>
      <button type="button" className="pressable" onClick={seeNotices}>
        Seen
      </button>
    </section>
  );
}
