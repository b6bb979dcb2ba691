/** One tagged conductor of the list. */
import { LIMITS } from '../../../engine/refit/limits.ts';
import { tagFound } from '../../../engine/refit/survey-set.ts';
import type { Tag } from '../../../engine/refit/types.ts';
import type { Session } from '../../state/session.ts';
import { Choice } from './choice.tsx';
import { DraftField } from './draft-field.tsx';
import { More } from './more.tsx';
import { Photos } from './photos.tsx';
import { recordLatest } from './record.ts';
import { ENDS, TAG_FIELDS, TAG_NAMES } from './tag-fields.ts';

export function TagCard({ session, tag }: { session: Session; tag: Tag }) {
  const save = (found: Partial<Tag>): Promise<boolean> =>
    recordLatest(session, (refit) => tagFound(refit, tag.id, found));
  const remove = (): void => {
    void recordLatest(session, (refit) => {
      const old = refit.tags[tag.id];
      return old && { do: 'tag', id: tag.id, old, new: null };
    });
  };
  const called = tag.tag || `without a tag, ${tag.here}`;
  return (
    <>
      <h3>
        {tag.tag || 'No tag yet'}
        {tag.colour && <span className="soft"> {tag.colour}</span>}
      </h3>
      <p>
        {tag.cable && `${tag.cable}: `}
        {tag.here || 'not written where'} → {tag.there || <em>not traced yet</em>}
        {tag.signal && <span className="soft">, {tag.signal}</span>}
      </p>
      <Choice
        legend={`Tagged ends of ${called}`}
        options={ENDS}
        value={tag.state}
        onChoose={(state) => void save({ state })}
      />
      <More
        of={called}
        words={tag.photos.length > 0 ? `Change, ${tag.photos.length} photos` : 'Change, photo'}
      >
        <div className="survey-fields">
          {TAG_NAMES.map((name) => (
            <DraftField
              key={name}
              label={TAG_FIELDS[name].label}
              like={TAG_FIELDS[name].like}
              draft={`${session.id}.tag.${tag.id}.${name}`}
              recorded={tag[name]}
              onSave={(text) => save({ [name]: text })}
            />
          ))}
        </div>
        <DraftField
          label="Notes"
          draft={`${session.id}.tag.${tag.id}.note`}
          recorded={tag.note}
          onSave={(note) => save({ note })}
          lines
          most={LIMITS.text}
        />
        <Photos
          refit={session.id}
          of={`tag ${called}`}
          names={tag.photos}
          onChange={(photos) => save({ photos })}
        />
        <button type="button" className="plain" onClick={remove}>
          Take tag {called} off the list
        </button>
      </More>
    </>
  );
}
