import type { KeepOut } from "../../car/car.ts";
import { mirrored, scale } from "../../geometry/vec3.ts";

/** Whether a thing stands wholly about the right side: its middle lies right of the centreline. */
export function isOnRight(keepOut: KeepOut): boolean {
  switch (keepOut.shape) {
    case "box":
      return keepOut.centre.y < 0;
    case "tube":
      return keepOut.from.y + keepOut.to.y < 0;
    case "half-space":
      return keepOut.point.y < 0;
  }
}

/** The same thing on the other side of the car. */
export function mirroredKeepOut(keepOut: KeepOut): KeepOut {
  switch (keepOut.shape) {
    case "box":
      // The second axis turned round keeps the three right-handed; a box does not notice.
      return {
        ...keepOut,
        centre: mirrored(keepOut.centre),
        axisX: mirrored(keepOut.axisX),
        axisY: scale(mirrored(keepOut.axisY), -1),
      };
    case "tube":
      return { ...keepOut, from: mirrored(keepOut.from), to: mirrored(keepOut.to) };
    case "half-space":
      return { ...keepOut, point: mirrored(keepOut.point), normal: mirrored(keepOut.normal) };
  }
}
