/** Photos of one thing: taken with the phone's camera or chosen, kept bare, shown small, taken out again. */
import { type ChangeEvent, useId, useState } from 'react';
import { LIMITS } from '../../../engine/refit/limits.ts';
import { api, Refusal } from '../../api.ts';
import { readyPhoto } from '../../photo.ts';

interface Props {
  readonly refit: string;
  /** Of what they are, for the sentence and for their names: 'X motor'. */
  readonly of: string;
  readonly names: readonly string[];
  /** Records the names; resolves to false where they were not. */
  readonly onChange: (names: readonly string[]) => Promise<boolean>;
}

const TYPES = 'image/jpeg,image/png,image/webp';

export function Photos({ refit, of, names, onChange }: Props) {
  const id = useId();
  const [said, setSaid] = useState({ text: '', bad: false });
  const [busy, setBusy] = useState(false);
  const full = names.length >= LIMITS.photos;

  const add = async (event: ChangeEvent<HTMLInputElement>): Promise<void> => {
    const { files, value } = event.target;
    const file = files?.[0];
    if (!file || value === '') return;
    event.target.value = '';
    setBusy(true);
    setSaid({ text: 'Sending the photo …', bad: false });
    try {
      const ready = await readyPhoto(file);
      const { name, stripped } = await send(refit, of, ready.bytes, ready.ending);
      const recorded = await onChange([...names, name]);
      const gone = stripped.length > 0 ? `Taken out of it: ${stripped.join(', ')}.` : '';
      setSaid({
        text: recorded
          ? ['Photo kept.', ready.says, gone].filter(Boolean).join(' ')
          : 'The photo is kept, but not noted here; see below why.',
        bad: !recorded,
      });
    } catch (error) {
      setSaid({ text: error instanceof Error ? error.message : String(error), bad: true });
    } finally {
      setBusy(false);
    }
  };

  return (
    <div className="survey-photos">
      {names.map((name, index) => (
        <figure key={name}>
          <a href={api.photoUrl(refit, name)} target="_blank" rel="noreferrer">
            <img src={api.photoUrl(refit, name)} alt={`${of}, ${index + 1}`} loading="lazy" />
          </a>
          <button
            type="button"
            className="plain"
            onClick={() => void onChange(names.filter((each) => each !== name))}
          >
            Take out
            <span className="hidden">
              {' '}
              photo {index + 1} of {of}
            </span>
          </button>
        </figure>
      ))}
      {!full && (
        <div className="row">
          <Pick id={`${id}-take`} words="Take a photo" of={of} camera disabled={busy} onPick={add} />
          <Pick id={`${id}-file`} words="Photo from a file" of={of} disabled={busy} onPick={add} />
        </div>
      )}
      <p className={said.bad ? 'small bad' : 'small soft'} role="status">
        {said.text}
      </p>
    </div>
  );
}

interface PickProps {
  readonly id: string;
  readonly words: string;
  readonly of: string;
  readonly camera?: boolean;
  readonly disabled: boolean;
  readonly onPick: (event: ChangeEvent<HTMLInputElement>) => void;
}

/** The label is the button to see; the input under it takes the keyboard. */
function Pick({ id, words, of, camera = false, disabled, onPick }: PickProps) {
  return (
    <span className={camera ? 'survey-pick camera' : 'survey-pick'}>
      <input
        id={id}
        type="file"
        accept={TYPES}
        {...(camera ? { capture: 'environment' as const } : {})}
        disabled={disabled}
        onChange={onPick}
      />
      <label htmlFor={id} className="button">
        {words}
        <span className="hidden"> of {of}</span>
      </label>
    </span>
  );
}

/** Most names to try before giving up: another window may be sending photos of the same thing. */
const TRIES = 40;

async function send(refit: string, of: string, bytes: Blob, ending: string) {
  const stem =
    of
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 40) || 'photo';
  const { photos } = await api.photos(refit);
  const taken = new Set(photos.map((name) => name.toLowerCase().replace(/\.[a-z]+$/, '')));
  let number = 1;
  for (let tries = 0; ; tries++) {
    while (taken.has(`${stem}-${number}`)) number++;
    try {
      return await api.savePhoto(refit, `${stem}-${number}.${ending}`, bytes);
    } catch (error) {
      if (!(error instanceof Refusal && error.problem.code === 'conflict') || tries >= TRIES) throw error;
      number++;
    }
  }
}
