/** A long list a page at a time. */
import { useEffect, useState } from 'react';

export interface Pages<T> {
  readonly shown: readonly T[];
  readonly at: number;
  readonly of: number;
  readonly go: (page: number) => void;
  readonly size: number;
  readonly all: number;
}

/** `reset` is what begins the list anew: another search. */
export function usePages<T>(list: readonly T[], size: number, reset: string): Pages<T> {
  const [at, setAt] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another search begins on its first page
  useEffect(() => setAt(0), [reset]);
  const of = Math.max(1, Math.ceil(list.length / size));
  const now = Math.min(at, of - 1);
  return { shown: list.slice(now * size, now * size + size), at: now, of, go: setAt, size, all: list.length };
}

export function Pager<T>({ pages: { at, of, go, size, all }, of: what }: { pages: Pages<T>; of: string }) {
  if (of === 1) return null;
  return (
    <nav className="row" aria-label={`Pages of ${what}`}>
      <button type="button" disabled={at === 0} onClick={() => go(at - 1)}>
        Before
      </button>
      <span>
        {at * size + 1} to {Math.min(all, (at + 1) * size)} of {all} {what}
      </span>
      <button type="button" disabled={at >= of - 1} onClick={() => go(at + 1)}>
        Next
      </button>
    </nav>
  );
}
