import type { ReactNode } from "react";
import { BenchFoot } from "../app/CarHead.tsx";
import { Dialog } from "../app/Dialog.tsx";
import { useBench } from "../app/use-bench.ts";
import { OrderOfWork } from "../steps/OrderOfWork.tsx";
import { showPanel } from "../store/bench.ts";

/** On a phone the order of work lives behind one control. */
export function StepsPanel(): ReactNode {
  const name = useBench(({ document }) => document?.name ?? "No car");
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
