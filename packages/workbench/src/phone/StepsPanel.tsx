import type { ReactNode } from "react";
import { useStore } from "zustand";
import { BenchFoot } from "../app/CarHead.tsx";
import { Dialog } from "../app/Dialog.tsx";
import { useBench } from "../app/use-bench.ts";
import { OrderOfWork } from "../steps/OrderOfWork.tsx";
import { showPanel } from "../store/bench.ts";
import { connection } from "../store/connection.ts";

/** On a phone the order of work lives behind one control. */
export function StepsPanel(): ReactNode {
  const file = useStore(connection, (state) => state.name);
  const name = useBench(({ document }) => document?.name ?? file ?? "No car");
  return (
    <Dialog title={name} isFull>
      <OrderOfWork onChosen={() => showPanel(null)} />
      <button type="button" className="pressable wide" onClick={() => showPanel({ kind: "cycle-and-read" })}>
        Cycle and read, one number a screen
      </button>
      <BenchFoot />
    </Dialog>
  );
}
