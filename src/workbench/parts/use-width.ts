import { type RefCallback, useCallback, useRef, useState } from 'react';

/** The width of an element in whole pixels, kept up to date; `initial` until it is known. */
export function useWidth<T extends Element>(initial: number): [RefCallback<T>, number] {
  const [width, setWidth] = useState(initial);
  const observer = useRef<ResizeObserver | null>(null);
  const ref = useCallback((element: T | null) => {
    observer.current?.disconnect();
    if (!element) return;
    observer.current = new ResizeObserver(([entry]) => {
      const wide = Math.floor(entry?.contentRect.width ?? 0);
      if (wide > 0) setWidth(wide);
    });
    observer.current.observe(element);
  }, []);
  return [ref, width];
}
