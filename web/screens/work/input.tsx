/** One field of a piece of work. */
import { wordsOf } from '../../../engine/quantity/settings.ts';
import { capital } from '../../../engine/quantity/words.ts';
import type { WorkField } from '../../../engine/work/index.ts';
import { AskBack, focusOn, useAskBack } from '../../parts/ask-back.tsx';

interface Props {
  readonly id: string;
  readonly field: WorkField;
  readonly value: string;
  readonly change: (value: string) => void;
  /** When the field is left, or Enter pressed; an option counts at once. */
  readonly keep?: (value: string) => void;
  readonly fault?: string | undefined;
  /** What is asked back of a number that is hardly what was meant. */
  readonly question?: string | undefined;
  /** What is asked back of a text before it is kept. */
  readonly askBack?: (value: string) => string | undefined;
}

export function WorkInput({ id, field, value, change, keep, fault, question, askBack }: Props) {
  const { name, usually, example, needed } = field;
  const back = useAskBack((typed) => askBack?.(typed));
  const done = (): void => {
    if (keep && !back.holds(value)) keep(value);
  };
  const said = fault ?? (back.asked ? undefined : question);
  const described = said ? `${id}-fault` : undefined;
  const entry = (
    <label htmlFor={id}>
      <span>{capital(name)}</span>
      {field.kind === 'choice' ? (
        <select
          id={id}
          value={field.options.includes(value) ? value : ''}
          aria-invalid={fault !== undefined}
          aria-describedby={described}
          onChange={(event) => {
            change(event.target.value);
            keep?.(event.target.value);
          }}
        >
          <option value="">{usually ? `usual: ${usually}` : 'choose'}</option>
          {field.options.map((option) => (
            <option key={option} value={option}>
              {wordsOf(field, option)}
            </option>
          ))}
        </select>
      ) : (
        <input
          id={id}
          value={value}
          maxLength={80}
          autoComplete="off"
          spellCheck={false}
          placeholder={usually ?? (needed ? `such as ${example}` : example)}
          aria-invalid={fault !== undefined}
          aria-describedby={back.asked ? `${id}-asked` : described}
          onChange={(event) => {
            back.drop();
            change(event.target.value);
          }}
          onBlur={done}
          onKeyDown={(event) => {
            if (event.key === 'Enter' && keep) {
              event.preventDefault();
              done();
            }
          }}
        />
      )}
      {said && (
        <span id={described} className={fault ? 'small bad fault' : 'small fault'}>
          {said}
        </span>
      )}
    </label>
  );
  return (
    <>
      {entry}
      <AskBack
        id={`${id}-asked`}
        says={back.asked?.says}
        onAnyway={() => {
          back.allow(value);
          done();
          focusOn(id);
        }}
        onChange={() => focusOn(id)}
      />
    </>
  );
}
