/** Keeps what sticks to the lower edge above the page's foot. */
import { type RefObject, useEffect } from 'react';

/** The page's foot grows with what it says; the line with the newest value stays above it. */
export function useFootHeight(root: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const foot = document.querySelector<HTMLElement>('footer.status');
    if (!foot) return;
    const observer = new ResizeObserver(() =>
      root.current?.style.setProperty('--foot', `${foot.offsetHeight + 2}px`),
    );
    observer.observe(foot);
    return () => observer.disconnect();
  }, [root]);
}
