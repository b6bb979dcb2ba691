/** What opens below a card; it is only made when it is opened. */
import { type ReactNode, useState } from 'react';

export function More({ of, words, children }: { of: string; words: string; children: ReactNode }) {
  const [open, setOpen] = useState(false);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        {words}
        <span className="hidden"> of {of}</span>
      </summary>
      {open && <div className="survey-more">{children}</div>}
    </details>
  );
}
