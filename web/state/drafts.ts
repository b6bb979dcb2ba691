/** What is being typed survives a reload: each field keeps its text in the browser until it is recorded. */
import { useEffect, useState } from 'react';

const PREFIX = 'fettle-draft:';
/** Longer than any field may be; a browser holds only a few megabytes. */
const LONGEST = 4_000;

export function readDraft(key: string): string | undefined {
  try {
    return localStorage.getItem(PREFIX + key) ?? undefined;
  } catch {
    return undefined;
  }
}

export function keepDraft(key: string, text: string | undefined): void {
  try {
    if (text === undefined || text.length > LONGEST) localStorage.removeItem(PREFIX + key);
    else localStorage.setItem(PREFIX + key, text);
  } catch {
    // A browser that keeps nothing loses the draft on a reload and nothing else.
  }
}

/** The text of a field: the draft where there is one, else what is recorded, also when that changes elsewhere. */
export function useDraft(key: string, recorded: string): [text: string, set: (text: string) => void] {
  const [text, setText] = useState(() => readDraft(key) ?? recorded);
  useEffect(() => {
    const draft = readDraft(key);
    if (draft === undefined) setText(recorded);
    else if (draft === recorded) keepDraft(key, undefined);
  }, [key, recorded]);
  const set = (now: string): void => {
    setText(now);
    keepDraft(key, now === recorded ? undefined : now);
  };
  return [text, set];
}
