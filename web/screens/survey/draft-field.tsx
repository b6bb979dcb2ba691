/** A field of the survey: leaving it or Enter records it, Escape goes back to what is recorded. */
import { type KeyboardEvent, useId, useState } from 'react';
import { AskBack, focusOn, useAskBack } from '../../parts/ask-back.tsx';
import { keepDraft, useDraft } from '../../state/drafts.ts';

interface Props {
  readonly label: string;
  /** Under which the draft is kept: refit, thing and field. */
  readonly draft: string;
  readonly recorded: string;
  /** Resolves to false where it was not recorded. */
  readonly onSave: (text: string) => Promise<boolean>;
  /** What is wrong with a text, in a sentence. */
  readonly check?: (text: string) => string | undefined;
  /** What is asked back of a text before it is recorded. */
  readonly askBack?: (text: string) => string | undefined;
  readonly unit?: string;
  readonly like?: string;
  readonly lines?: boolean;
  readonly most?: number;
}

export function DraftField({
  label,
  draft,
  recorded,
  onSave,
  check,
  askBack,
  unit,
  like,
  lines = false,
  most = 120,
}: Props) {
  const id = useId();
  const [text, setText] = useDraft(draft, recorded);
  const [fault, setFault] = useState<string>();
  const back = useAskBack((typed) => askBack?.(typed), text.trim() === recorded ? undefined : text.trim());
  const save = async (): Promise<void> => {
    const now = text.trim();
    if (now === recorded) {
      setText(recorded);
      setFault(undefined);
      back.drop();
      return;
    }
    const wrong = check?.(now);
    setFault(wrong);
    if (wrong !== undefined || back.holds(now)) return;
    if (await onSave(now)) keepDraft(draft, undefined);
  };
  const onKey = (event: KeyboardEvent): void => {
    if (event.key === 'Enter' && !lines) void save();
    if (event.key === 'Escape') {
      setText(recorded);
      setFault(undefined);
      back.drop();
    }
  };
  const common = {
    id,
    value: text,
    maxLength: most,
    placeholder: like ? `like ${like}` : undefined,
    'aria-describedby': back.asked ? `${id}-asked ${id}-said` : `${id}-said`,
    'aria-invalid': fault !== undefined,
    onChange: (event: { target: { value: string } }) => {
      setText(event.target.value);
      back.drop();
    },
    onBlur: () => void save(),
    onKeyDown: onKey,
  };
  return (
    <div className="survey-field">
      <label htmlFor={id}>
        {label}
        {unit && <span className="small soft"> in {unit} or another unit</span>}
      </label>
      {lines ? (
        <textarea {...common} />
      ) : (
        <input {...common} autoComplete="off" spellCheck={false} type="text" />
      )}
      <AskBack
        id={`${id}-asked`}
        says={back.asked?.says}
        onAnyway={() => {
          back.allow(text.trim());
          void save();
          focusOn(id);
        }}
        onChange={() => focusOn(id)}
      />
      <p id={`${id}-said`} className="small" aria-live="polite">
        {fault ? (
          <span className="bad">{fault}</span>
        ) : text.trim() !== recorded && !back.asked ? (
          <span className="soft">
            Not saved yet: leave the field{lines ? '' : ' or press Enter'} to save it.
          </span>
        ) : null}
      </p>
    </div>
  );
}
