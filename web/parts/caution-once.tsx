/**
 * A caution that stands in full until it was read once; then the words that keep somebody from harm stay, and one tap brings
 * the rest back.
 */
import { type ReactNode, useState } from 'react';

interface Props {
  /** Which caution it is: what was read is kept in the browser under it. */
  readonly id: string;
  /** What is never folded away: what to do before anything is touched. */
  readonly always: ReactNode;
  readonly children: ReactNode;
}

const PREFIX = 'fettle-read:';

function wasRead(id: string): boolean {
  try {
    return localStorage.getItem(PREFIX + id) !== null;
  } catch {
    return false;
  }
}

function keepRead(id: string): void {
  try {
    localStorage.setItem(PREFIX + id, 'yes');
  } catch {
    // A browser that keeps nothing shows it in full again.
  }
}

export function CautionOnce({ id, always, children }: Props) {
  const [open, setOpen] = useState(() => !wasRead(id));
  const [read, setRead] = useState(() => wasRead(id));
  const fold = (): void => {
    keepRead(id);
    setRead(true);
    setOpen(false);
  };
  return (
    <details
      className="caution caution-once"
      open={open}
      onToggle={(event) => {
        const now = event.currentTarget.open;
        if (now !== open) setOpen(now);
        // Folded by hand it was read as well.
        if (!now && !read) fold();
      }}
    >
      <summary>{always}</summary>
      {children}
      {!read && (
        <p>
          <button type="button" onClick={fold}>
            I have read it
          </button>
        </p>
      )}
    </details>
  );
}
