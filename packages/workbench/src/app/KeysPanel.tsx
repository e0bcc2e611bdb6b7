import type { ReactNode } from "react";
import { Dialog } from "./Dialog.tsx";
import { KEYS } from "./keys.ts";

/** What the keyboard can do. */
export function KeysPanel(): ReactNode {
  return (
    <Dialog title="Keys">
      <table className="keys-table">
        <tbody>
          {KEYS.map(([key, what]) => (
            <tr key={key}>
              <th scope="row">{key}</th>
              <td>{what}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Dialog>
  );
}
