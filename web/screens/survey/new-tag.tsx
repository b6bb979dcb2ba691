/** Quick entry of tags, one after another: the next number stands there already, the cable stays. */
import { type FormEvent, useRef, useState } from 'react';
import { newTagId, tagFound } from '../../../engine/refit/survey-set.ts';
import type { Refit, Tag } from '../../../engine/refit/types.ts';
import { keepDraft, readDraft } from '../../state/drafts.ts';
import type { Session } from '../../state/session.ts';
import { Choice } from './choice.tsx';
import { Photos } from './photos.tsx';
import { recordLatest } from './record.ts';
import { ENDS, nextTag, TAG_FIELDS, TAG_NAMES, type TagText } from './tag-fields.ts';

type Entry = Readonly<Record<TagText, string>> & Pick<Tag, 'state' | 'photos'>;

const EMPTY: Entry = {
  ...(Object.fromEntries(TAG_NAMES.map((name) => [name, ''])) as Record<TagText, string>),
  state: 'one-end',
  photos: [],
};

/** Seldom needed while standing at the machine. */
const LATER: ReadonlySet<TagText> = new Set(['otherTag', 'signal']);

function load(key: string): Entry {
  try {
    const kept: unknown = JSON.parse(readDraft(key) ?? '{}');
    if (typeof kept !== 'object' || kept === null) return EMPTY;
    const read = kept as Record<string, unknown>;
    const text = (name: string): string => (typeof read[name] === 'string' ? read[name].slice(0, 120) : '');
    return {
      ...(Object.fromEntries(TAG_NAMES.map((name) => [name, text(name)])) as Record<TagText, string>),
      state: typeof read.state === 'string' && read.state in ENDS ? (read.state as Tag['state']) : 'one-end',
      photos: Array.isArray(read.photos) ? read.photos.filter((name) => typeof name === 'string') : [],
    };
  } catch {
    return EMPTY;
  }
}

export function NewTag({ session, refit }: { session: Session; refit: Refit }) {
  const key = `${session.id}.new-tag`;
  const [entry, setEntry] = useState(() => load(key));
  const [said, setSaid] = useState('');
  const first = useRef<HTMLInputElement>(null);
  const change = (now: Entry): void => {
    setEntry(now);
    keepDraft(key, JSON.stringify(now));
  };
  const twice =
    entry.tag.trim() !== '' && Object.values(refit.tags).some(({ tag }) => tag === entry.tag.trim());

  const add = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const trimmed = Object.fromEntries(TAG_NAMES.map((name) => [name, entry[name].trim()]));
    if (trimmed.tag === '' && trimmed.here === '') {
      setSaid('Write what is on the sleeve, or where this end was.');
      first.current?.focus();
      return;
    }
    setSaid('');
    const { state, photos } = entry;
    const recorded = await recordLatest(session, (now) =>
      tagFound(now, newTagId(now), { ...trimmed, state, photos }),
    );
    if (!recorded) return;
    change({ ...EMPTY, cable: entry.cable, tag: nextTag(trimmed.tag ?? ''), state: entry.state });
    first.current?.focus();
  };

  const field = (name: TagText) => (
    <label key={name}>
      {TAG_FIELDS[name].label}
      <input
        ref={name === 'tag' ? first : undefined}
        value={entry[name]}
        maxLength={120}
        autoComplete="off"
        spellCheck={false}
        placeholder={`like ${TAG_FIELDS[name].like}`}
        onChange={(event) => change({ ...entry, [name]: event.target.value })}
      />
    </label>
  );

  return (
    <form className="sheet stack" aria-labelledby="new-tag" onSubmit={(event) => void add(event)}>
      <h2 id="new-tag">Next conductor</h2>
      <div className="survey-fields">{TAG_NAMES.filter((name) => !LATER.has(name)).map(field)}</div>
      <details>
        <summary>Other end’s tag, signal, photo</summary>
        <div className="survey-more">
          <div className="survey-fields">{TAG_NAMES.filter((name) => LATER.has(name)).map(field)}</div>
          <Photos
            refit={session.id}
            of={`tag ${entry.tag}`}
            names={entry.photos}
            onChange={(photos) => {
              change({ ...entry, photos });
              return Promise.resolve(true);
            }}
          />
        </div>
      </details>
      <div>
        <p className="small soft">Which ends carry their tag now?</p>
        <Choice
          legend="Ends that carry their tag"
          options={ENDS}
          value={entry.state}
          onChoose={(state) => change({ ...entry, state })}
        />
      </div>
      <p role="status" className={said ? 'bad' : 'soft'}>
        {said ||
          (twice
            ? `There is a tag ${entry.tag.trim()} already; two ends may share one only if one conductor joins them.`
            : '')}
      </p>
      <button type="submit" className="main">
        Add to the list
      </button>
    </form>
  );
}
