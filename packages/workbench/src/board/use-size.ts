import { type RefObject, useLayoutEffect, useRef, useState } from "react";

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** The size of an element, whole px, followed as the window changes. Null before it is on the page. */
export function useSize(): readonly [RefObject<HTMLDivElement | null>, Size | null] {
  const ref = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState<Size | null>(null);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const measure = (): void => {
      const next = { width: Math.floor(element.clientWidth), height: Math.floor(element.clientHeight) };
      setSize((before) => (before && before.width === next.width && before.height === next.height ? before : next));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, size];
}
