/** The width an element has on the screen, followed as it changes. */
import { type RefObject, useEffect, useRef, useState } from 'react';

/** Zero until it is known; drawings wait for it, so that letters are never scaled. */
export function useWidth<T extends HTMLElement>(): [ref: RefObject<T | null>, width: number] {
  const ref = useRef<T>(null);
  const [width, setWidth] = useState(0);
  useEffect(() => {
    const element = ref.current;
    if (!element) return;
    const observer = new ResizeObserver(([entry]) => entry && setWidth(Math.floor(entry.contentRect.width)));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, width];
}
