/** One fact to enter: typing shows the new verdicts at once, leaving the field or Enter records it. */

import { type KeyboardEvent, memo, useEffect, useId, useRef, useState } from 'react';
import { EXAMPLES } from '../../engine/parts/index.ts';
import type { FactSpec } from '../../engine/parts/types.ts';
import { own } from '../../engine/quantity/own.ts';
import { BASES, type Basis } from '../../engine/quantity/types.ts';
import { capital } from '../../engine/quantity/words.ts';
import { askBackOfText } from '../../engine/refit/read-fact.ts';
import type { Fact } from '../../engine/refit/types.ts';
import { keepDraft, readDraft } from '../state/drafts.ts';
import type { Session, View } from '../state/session.ts';
import type { Reading } from '../worker/protocol.ts';
import { AskBack, focusOn, useAskBack } from './ask-back.tsx';

const BASIS_WORDS: Readonly<Record<Basis, string>> = {
  measured: 'I measured it',
  datasheet: 'datasheet',
  plate: 'read on the plate',
  handbook: 'handbook',
  told: 'I was told',
  guess: 'my guess',
};

interface Props {
  readonly session: Session;
  readonly view: View;
  readonly path: string;
  readonly spec: FactSpec;
  readonly fact: Fact | undefined;
  /** How to find out is shown at once rather than behind a button. */
  readonly guide?: boolean;
  /** What stands beside the name: 'decides 4 answers'. */
  readonly aside?: string;
  /** The name stands above it already: it is only read out. */
  readonly titled?: boolean;
}

/** 'like 34 V/krpm' for 'X.motor.emf' and for 'X.motor@x-motor-2.emf'. */
function exampleOf(path: string): string {
  const [place = '', name = ''] = path
    .replace(/@[^.]*/, '')
    .split('.')
    .slice(-2);
  const example = own(EXAMPLES, place)?.[name];
  return example === undefined ? '' : `like ${example}`;
}

const textOf = (fact: Fact | undefined): string => {
  if (!fact) return '';
  const { value } = fact;
  if (value.kind === 'choice') return value.option;
  if (value.kind === 'choices') return value.options.join(', ');
  return value.text;
};

/** Draws the field anew only when something of its own changed: a keystroke in one must not cost those beside it. */
export function FactField({ view, ...own }: Props) {
  return <Field {...own} reading={view.reading?.path === own.path ? view.reading : undefined} />;
}

interface FieldProps extends Omit<Props, 'view'> {
  readonly reading: Reading | undefined;
}

const Field = memo(function Field({
  session,
  path,
  spec,
  fact,
  guide = false,
  aside,
  titled = false,
  reading,
}: FieldProps) {
  const id = useId();
  const recorded = textOf(fact);
  // What waits for an answer is kept over a reload.
  const draft = `${session.id}.fact.${path}`;
  const [waiting] = useState(() => readDraft(draft));
  const back = useAskBack((typed) => askBackOfText(spec, typed), waiting);
  const [text, setText] = useState(back.asked?.text ?? recorded);
  const [basis, setBasis] = useState<Basis>(fact?.basis ?? 'guess');
  const isAsked = useRef(false);
  isAsked.current = back.asked !== undefined;
  // What another window recorded replaces what stands here, unless the person is typing or asked back.
  useEffect(() => {
    if (isAsked.current) return;
    setText(recorded);
    setBasis(fact?.basis ?? 'guess');
  }, [recorded, fact?.basis]);
  const wish = spec.kind === 'quantity' && spec.chosen === true;
  const given = wish ? undefined : basis;

  const drop = (): void => {
    back.drop();
    keepDraft(draft, undefined);
  };
  const type = (value: string): void => {
    setText(value);
    drop();
    void session.draft(path, value, given);
  };
  const commit = (value = text, as = given): void => {
    if (value.trim() === '' || (value === recorded && (as === undefined || as === fact?.basis))) {
      if (session.isReading()) void session.dropTrial();
      if (value.trim() === '') setText(recorded);
      drop();
      return;
    }
    if (value !== recorded && back.holds(value)) {
      keepDraft(draft, value);
      return;
    }
    keepDraft(draft, undefined);
    void session.commit(path, value, as);
  };
  const onKey = (event: KeyboardEvent): void => {
    if (event.key === 'Enter' && (isMoney(spec) || (spec.kind !== 'text' && spec.kind !== 'curve'))) commit();
    if (event.key === 'Escape') {
      setText(recorded);
      drop();
      void session.dropTrial();
    }
  };

  return (
    <div className="field" data-path={path}>
      <div className="row spread">
        {spec.kind === 'choices' ? (
          <strong id={`${id}-name`} className={titled ? 'hidden' : undefined}>
            {capital(spec.name)}
          </strong>
        ) : (
          <label htmlFor={id} className={titled ? 'hidden' : undefined}>
            {capital(spec.name)}
          </label>
        )}
        {aside && <span className="small soft">{aside}</span>}
      </div>
      {guide && <HowTo spec={spec} />}
      <div className={`entry${spec.kind === 'choices' ? ' many' : isMoney(spec) ? ' money' : ''}`}>
        <Entry
          id={id}
          spec={spec}
          example={exampleOf(path)}
          text={text}
          onType={type}
          onCommit={commit}
          onKey={onKey}
          invalid={reading?.problem !== undefined}
          isAsked={back.asked !== undefined}
        />
        {!wish && (
          <select
            aria-label={`Where the ${spec.name} comes from`}
            value={basis}
            onChange={(event) => {
              const now = event.target.value as Basis;
              setBasis(now);
              if (recorded !== '') commit(text, now);
            }}
          >
            {BASES.map((each) => (
              <option key={each} value={each}>
                {BASIS_WORDS[each]}
              </option>
            ))}
          </select>
        )}
      </div>
      <AskBack
        id={`${id}-asked`}
        says={back.asked?.says}
        onAnyway={() => {
          back.allow(text);
          commit();
          focusOn(id);
        }}
        onChange={() => focusOn(id)}
      />
      <p id={`${id}-said`} className="said" aria-live="polite">
        {reading?.problem && <span className="bad">{reading.problem.message}</span>}
        {reading?.problem?.readings?.map((each) => (
          <button
            key={each}
            type="button"
            className="plain"
            onClick={() => {
              setText(each);
              commit(each);
            }}
          >
            {each}
          </button>
        ))}
        {reading &&
          !reading.problem &&
          [...reading.notes, ...(back.asked ? [] : reading.questions)].map(capital).join('. ')}
      </p>
      <div className="row">
        {fact && (
          <button
            type="button"
            className="plain"
            onClick={() => {
              drop();
              void session.commit(path, 'unknown');
            }}
          >
            Forget it
          </button>
        )}
        {!guide && (
          <details>
            <summary>How to find out</summary>
            <HowTo spec={spec} />
          </details>
        )}
      </div>
    </div>
  );
});

function HowTo({ spec }: { spec: FactSpec }) {
  return (
    <>
      {spec.caution && (
        <p className="caution">
          <strong>Take care.</strong> {spec.caution}
        </p>
      )}
      <p className="soft">{spec.findOut}</p>
    </>
  );
}

interface EntryProps {
  readonly id: string;
  readonly spec: FactSpec;
  /** What may be typed: 'like 34 V/krpm'. */
  readonly example: string;
  readonly text: string;
  readonly onType: (text: string) => void;
  readonly onCommit: (text?: string) => void;
  readonly onKey: (event: KeyboardEvent) => void;
  readonly invalid: boolean;
  /** A question about it waits for an answer. */
  readonly isAsked: boolean;
}

function Entry({ id, spec, example, text, onType, onCommit, onKey, invalid, isAsked }: EntryProps) {
  const common = {
    id,
    value: text,
    'aria-describedby': isAsked ? `${id}-asked ${id}-said` : `${id}-said`,
    'aria-invalid': invalid,
    onKeyDown: onKey,
  };
  if (spec.kind === 'choice') {
    return (
      <select
        {...common}
        onChange={(event) => {
          onType(event.target.value);
          onCommit(event.target.value === '' ? 'unknown' : event.target.value);
        }}
      >
        <option value="">don’t know</option>
        {Object.entries(spec.options).map(([option, words]) => (
          <option key={option} value={option}>
            {words}
          </option>
        ))}
      </select>
    );
  }
  if (spec.kind === 'choices') {
    const on = new Set(
      text
        .split(',')
        .map((each) => each.trim())
        .filter(Boolean),
    );
    return (
      <fieldset aria-labelledby={`${id}-name`}>
        {Object.entries(spec.options).map(([option, words]) => (
          <div className="tickable" key={option}>
            <input
              id={`${id}-${option}`}
              type="checkbox"
              checked={on.has(option)}
              onChange={() => {
                const now = Object.keys(spec.options)
                  .filter((each) => (each === option ? !on.has(each) : on.has(each)))
                  .join(', ');
                onType(now);
                onCommit(now === '' ? 'unknown' : now);
              }}
            />
            <label htmlFor={`${id}-${option}`} style={{ fontWeight: 400 }}>
              {words}
            </label>
          </div>
        ))}
      </fieldset>
    );
  }
  const field = {
    ...common,
    onChange: (event: { target: { value: string } }) => onType(event.target.value),
    onBlur: () => onCommit(),
    autoComplete: 'off',
    spellCheck: false,
  };
  if (spec.kind === 'quantity') return <input {...field} inputMode="text" placeholder={example} />;
  if (isMoney(spec)) return <input {...field} placeholder="like 80–120 EUR" />;
  return (
    <textarea
      {...field}
      placeholder={
        spec.kind === 'curve'
          ? `1.1 ${spec.unit} at 300 ${spec.xUnit}; 0.8 ${spec.unit} at 600 ${spec.xUnit}`
          : ''
      }
    />
  );
}

const isMoney = (spec: FactSpec): boolean => spec.kind === 'text' && spec.of === 'money';
