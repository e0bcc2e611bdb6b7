import type { ReactNode } from "react";
import type { StepShape } from "../steps/step-state.ts";

const Svg = ({ children, size = 18 }: { readonly children: ReactNode; readonly size?: number }) => (
  <svg className="mark" width={size} height={size} viewBox="0 0 18 18" aria-hidden="true">
    {children}
  </svg>
);

/** A step's state as a shape; its word is always written beside it. */
export function StepMark({ shape }: { readonly shape: StepShape | "waits" }): ReactNode {
  switch (shape) {
    case "done":
      return (
        <Svg>
          <path d="M3 9.5l4 4L15 4" />
        </Svg>
      );
    case "again":
      return (
        <Svg>
          <path d="M15 9a6 6 0 1 1-2.2-4.6M13 1v4h-4" />
        </Svg>
      );
    case "bench":
      return (
        <Svg>
          <path d="M2 3h9l5 6-5 6H2z" className="full" />
        </Svg>
      );
    case "begun":
      return (
        <Svg>
          <rect x="3" y="3" width="12" height="12" />
          <path d="M3 15L15 3v12z" className="full" />
        </Svg>
      );
    case "open":
      return (
        <Svg>
          <rect x="3" y="3" width="12" height="12" />
        </Svg>
      );
    case "waits":
      return (
        <Svg>
          <path d="M3 9h12" strokeDasharray="3 2.5" />
        </Svg>
      );
  }
}

export const UndoMark = () => (
  <Svg>
    <path d="M7 3L2.5 7.5 7 12M3 7.5h8a4 4 0 0 1 0 8H8" />
  </Svg>
);
export const RedoMark = () => (
  <Svg>
    <path d="M11 3l4.5 4.500L11 12M15 7.500H7a4 4 0 0 0 0 8h3" />
  </Svg>
);
export const BackMark = () => (
  <Svg>
    <path d="M11 3L5 9l6 6" />
  </Svg>
);
export const UpMark = () => (
  <Svg>
    <path d="M9 16V3M4 8l5-5 5 5" />
  </Svg>
);
export const DownMark = () => (
  <Svg>
    <path d="M9 2v13M4 10l5 5 5-5" />
  </Svg>
);
export const CycleMark = () => (
  <Svg>
    <path d="M9 2v14M5 6l4-4 4 4M5 12l4 4 4-4" />
  </Svg>
);
export const SpaceMark = () => (
  <Svg>
    <path d="M9 2l6.5 3.6v6.8L9 16l-6.5-3.6V5.6zM9 9.2V16M9 9.2l6.5-3.6M9 9.2L2.5 5.6" />
  </Svg>
);
export const StandMark = () => (
  <Svg>
    <path d="M5 3v12M13 3v12" />
  </Svg>
);
export const ListMark = () => (
  <Svg size={20}>
    <path d="M2 4h1.500M6 4h10M2 9h1.500M6 9h10M2 14h1.500M6 14h10" />
  </Svg>
);
export const RubOutMark = () => (
  <Svg size={24}>
    <path d="M6 3.500h10v11H6L1.5 9zM9 6.500l4.5 5M13.5 6.500l-4.5 5" />
  </Svg>
);

/** A finding's weight as a shape; its word is always written beside it. */
export function GravityMark({ gravity }: { readonly gravity: "must" | "mind" | "note" }): ReactNode {
  if (gravity === "must") {
    return (
      <Svg>
        <path d="M9 1.500L17 16H1z" className="stop-full" />
        <path d="M9 6.500v5M9 13v1.4" className="on-full" />
      </Svg>
    );
  }
  if (gravity === "mind") {
    return (
      <Svg>
        <path d="M9 2l7 7-7 7-7-7z" className="stop-line" />
      </Svg>
    );
  }
  return (
    <Svg>
      <circle cx="9" cy="9" r="2.6" className="full" />
    </Svg>
  );
}

/** The pennant of a limit, with its order; solid for the first to bite. */
export function Pennant({ order, isFirst }: { readonly order: string; readonly isFirst: boolean }): ReactNode {
  return (
    <svg
      className={isFirst ? "pennant first" : "pennant"}
      width="24"
      height="18"
      viewBox="0 0 24 18"
      aria-hidden="true"
    >
      <path d="M1.5 1.500h15.500l5.5 7.5-5.5 7.500H1.500z" />
      <text x="9.5" y="13.8" textAnchor="middle">
        {order}
      </text>
    </svg>
  );
}
