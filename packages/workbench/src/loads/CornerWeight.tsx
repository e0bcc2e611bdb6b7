import type { ReactNode } from "react";
import { useSettledDocument } from "../app/use-settled.ts";
import { Fields } from "../form/Fields.tsx";
import { fieldAt } from "../form/schema-fields.ts";

/** Without the weight on the wheel there is no load: it is asked for here as well. */
export function CornerWeight(): ReactNode {
  const document = useSettledDocument();
  if (!document) return null;
  const fields = ["weights.corner", "weights.unsprung"].flatMap((path) => fieldAt(path, document) ?? []);
  return (
    <>
      <p>
        Every load is counted in g: so many times what one rear wheel carries. Put a scale under that wheel, people in,
        tank half full, car level.
      </p>
      <div className="inputs">
        <Fields fields={fields} />
      </div>
    </>
  );
}
