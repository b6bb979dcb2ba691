/** Adds a piece of work: its kind and the few fields without which nothing can be said. */
import { useId, useState } from 'react';
import type { Refit, Work } from '../../../engine/refit/types.ts';
import {
  fieldsOf,
  newWorkId,
  oddFields,
  WORK_KINDS,
  type WorkField,
  type WorkKind,
} from '../../../engine/work/index.ts';
import { AskBack, focusOn } from '../../parts/ask-back.tsx';
import { WorkInput } from './input.tsx';

interface Props {
  readonly refit: Refit;
  readonly record: (old: Work | null, next: Work) => void;
}

/** Asked at once; the rest can wait for the page of the work itself. */
const FIRST: Readonly<Record<WorkKind, readonly string[]>> = {
  thread: ['thread', 'side', 'way', 'length', 'material', 'cutter', 'speed'],
  tap: ['thread', 'depth', 'hole', 'material', 'holder'],
  cut: [
    'operation',
    'material',
    'thread',
    'diameter',
    'depth',
    'width',
    'feed',
    'teeth',
    'speed',
    'bar',
    'overhang',
  ],
};

export function AddWork({ refit, record }: Props) {
  const [kind, setKind] = useState<WorkKind>('thread');
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const [name, setName] = useState('');
  const [missing, setMissing] = useState<WorkField>();
  /** What was typed when a number far outside what is usual was asked back. */
  const [asked, setAsked] = useState('');
  const id = useId();
  const fields = fieldsOf(kind, typed).filter(({ key }) => FIRST[kind].includes(key));
  const odd = oddFields(kind, typed);
  const far = odd.find(({ isFar, key }) => isFar && fields.some((field) => field.key === key));
  const as = JSON.stringify([kind, typed]);
  /** `anyway`: the person has said that a number that looks like a slip is right. */
  const add = (anyway = false): void => {
    const settings = Object.fromEntries(
      fields.flatMap(({ key }) => {
        const value = typed[key]?.trim() ?? '';
        return value === '' ? [] : [[key, value]];
      }),
    );
    const lacking = fields.find(({ key, needed }) => needed && settings[key] === undefined);
    setMissing(lacking);
    if (lacking) {
      document.getElementById(`${id}-${lacking.key}`)?.focus();
      return;
    }
    if (far && !anyway) {
      setAsked(as);
      focusOn(`${id}-${far.key}`);
      return;
    }
    const next = newWorkId(refit, kind);
    record(null, {
      id: next,
      kind,
      name: name.trim().slice(0, 80) || settings.thread || settings.operation || next,
      settings,
    });
    setTyped({});
    setAsked('');
    setName('');
  };
  return (
    <form
      className="sheet stack work-add"
      onSubmit={(event) => {
        event.preventDefault();
        add();
      }}
    >
      <h3>Add another</h3>
      <fieldset>
        <legend className="hidden">Kind of work</legend>
        <div className="row">
          {(Object.keys(WORK_KINDS) as WorkKind[]).map((each) => (
            <button
              key={each}
              type="button"
              aria-pressed={each === kind}
              onClick={() => {
                setKind(each);
                setMissing(undefined);
              }}
            >
              {WORK_KINDS[each]}
            </button>
          ))}
        </div>
      </fieldset>
      <div className="work-fields">
        {fields.map((field) => (
          <WorkInput
            key={field.key}
            id={`${id}-${field.key}`}
            field={field}
            value={typed[field.key] ?? ''}
            change={(value) => setTyped({ ...typed, [field.key]: value })}
            fault={
              missing?.key === field.key ? `It is missing; write one such as ${field.example}.` : undefined
            }
            question={odd.find(({ key }) => key === field.key)?.sentence}
          />
        ))}
        <label htmlFor={`${id}-name`}>
          <span>what it is for</span>
          <input
            id={`${id}-name`}
            value={name}
            maxLength={80}
            placeholder="optional"
            onChange={(event) => setName(event.target.value)}
          />
        </label>
      </div>
      <AskBack
        id={`${id}-asked`}
        says={asked === as ? far?.sentence : undefined}
        onAnyway={() => add(true)}
        onChange={() => far && focusOn(`${id}-${far.key}`)}
      />
      <button type="submit" className="main">
        Add it
      </button>
    </form>
  );
}
