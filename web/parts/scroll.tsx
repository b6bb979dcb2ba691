/** Room for what may be wider than the window: it goes sideways by itself, by finger or by arrow keys. */
import type { ReactNode } from 'react';

interface Props {
  /** What is in it, for those who hear the page. */
  readonly label: string;
  readonly children: ReactNode;
}

export function Scroll({ label, children }: Props) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reached by the keyboard
    <section className="scroll" tabIndex={0} aria-label={label}>
      {children}
    </section>
  );
}
