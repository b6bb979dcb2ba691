/** Asking back: what is far outside what is usual stays in its field, unrecorded, until the person has said that it is right. */
import { type KeyboardEvent, useRef, useState } from 'react';

export interface Asked {
  /** As typed. */
  readonly text: string;
  /** What was understood, what is usual, and what may have been meant. */
  readonly says: string;
}

export interface AskingBack {
  /** The question that waits for an answer. */
  readonly asked: Asked | undefined;
  /** Whether a text must not be recorded yet; then the question is asked. */
  readonly holds: (text: string) => boolean;
  /** The person says that it is right: it holds no longer. */
  readonly allow: (text: string) => void;
  /** What was typed is another text now. */
  readonly drop: () => void;
}

/**
 * One field that asks back. `question` is what the engine asks of a text; `waiting` is a text that was typed before the page was
 * loaded anew and is not recorded yet: its question stands at once.
 */
export function useAskBack(question: (text: string) => string | undefined, waiting?: string): AskingBack {
  const ask = (text: string): Asked | undefined => {
    const says = question(text);
    return says === undefined ? undefined : { text, says };
  };
  const [asked, setAsked] = useState(() => (waiting === undefined ? undefined : ask(waiting)));
  const sure = useRef<string>(undefined);
  return {
    asked,
    holds: (text) => {
      if (text === sure.current) return false;
      const now = ask(text);
      setAsked(now);
      return now !== undefined;
    },
    allow: (text) => {
      sure.current = text;
      setAsked(undefined);
    },
    drop: () => {
      sure.current = undefined;
      setAsked(undefined);
    },
  };
}

interface Props {
  readonly id: string;
  /** The question; nothing is shown without one. */
  readonly says: string | undefined;
  readonly onAnyway: () => void;
  /** Goes back to the field with what was typed in it. */
  readonly onChange: () => void;
}

/** The question with its two answers, right behind its field. */
export function AskBack({ id, says, onAnyway, onChange }: Props) {
  if (says === undefined) return null;
  const onKey = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return;
    event.stopPropagation();
    onChange();
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a question with two answers, not the fields of a form
    <div role="group" aria-label="Is this right?" className="caution ask-back" onKeyDown={onKey}>
      <p id={id} role="alert">
        <strong>Not recorded yet.</strong> {says}
      </p>
      <div className="row">
        <button type="button" onClick={onAnyway}>
          Record it anyway
        </button>
        <button type="button" onClick={onChange}>
          Change it
        </button>
      </div>
    </div>
  );
}

/** Puts the cursor back into a field. */
export const focusOn = (id: string): void => document.getElementById(id)?.focus();
