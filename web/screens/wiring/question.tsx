/** One question of a proposal, answered where it stands: a choice, yes or no, a number with its unit, words. */
import { type FormEvent, useId, useState } from 'react';
import { exampleOf, type OpenQuestion, specAt } from '../../../engine/circuit/whole/index.ts';
import type { Wiring } from '../../../engine/refit/types.ts';
import { keepDraft, useDraft } from '../survey/drafts.ts';

interface Props {
  readonly open: OpenQuestion;
  /** With what is proposed, since a question may be about something that is not recorded yet. */
  readonly wiring: Wiring;
  readonly draft: string;
  /** It is recorded, and the wires are laid anew. */
  readonly isDone: boolean;
  /** What is wrong with it, in a sentence; undefined where it was recorded. */
  readonly answer: (text: string) => Promise<string | undefined>;
}

export function QuestionForm({ open: { question, waits }, wiring, draft, isDone, answer }: Props) {
  const id = useId();
  const [text, setText] = useDraft(draft, '');
  const [fault, setFault] = useState<string>();
  const { options, unit } = question;
  const yesNo = options?.length === 2 && options[0] === 'yes';
  const spec = specAt(question.place, wiring);
  const give = async (typed: string): Promise<void> => {
    const wrong =
      typed.trim() === ''
        ? `${question.asks} ${options ? 'Choose one of the answers.' : `Write it like ${spec ? exampleOf(spec) : unit}.`}`
        : await answer(typed);
    setFault(wrong);
    if (wrong === undefined) keepDraft(draft, undefined);
  };
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    void give(text);
  };
  const described = { 'aria-describedby': `${id}-said`, 'aria-invalid': fault !== undefined };
  return (
    <li className="sheet" data-question={question.id}>
      <form onSubmit={submit} noValidate>
        {yesNo ? (
          <fieldset className="row" {...described}>
            <legend>{question.asks}</legend>
            {options.map((each) => (
              <button key={each} type="button" disabled={isDone} onClick={() => void give(each)}>
                {each === 'yes' ? 'Yes' : 'No'}
              </button>
            ))}
          </fieldset>
        ) : (
          <>
            <label htmlFor={id}>
              {question.asks}
              {unit && unit !== '1' && <span className="small soft"> in {unit} or another unit</span>}
            </label>
            <div className="row wiring-answer">
              {options ? (
                <select id={id} value={text} onChange={(event) => setText(event.target.value)} {...described}>
                  <option value="">not known yet</option>
                  {options.map((each) => (
                    <option key={each}>{each}</option>
                  ))}
                </select>
              ) : (
                <input
                  id={id}
                  type="text"
                  value={text}
                  maxLength={120}
                  autoComplete="off"
                  spellCheck={false}
                  placeholder={spec ? `like ${exampleOf(spec)}` : undefined}
                  onChange={(event) => setText(event.target.value)}
                  {...described}
                />
              )}
              <button type="submit" disabled={isDone}>
                Answer
              </button>
            </div>
          </>
        )}
        <p id={`${id}-said`} className="small" aria-live="polite">
          {fault ? (
            <span className="bad">{fault}</span>
          ) : (
            <span className="soft">{isDone ? 'Recorded; the wires are laid anew.' : waits}</span>
          )}
        </p>
      </form>
    </li>
  );
}
