/** Everything that is no part of an axis: what else moves, lights or pumps, and how good the machine itself is. */

import { SKETCHES, type SurveyQuestion } from '../../../engine/parts/survey/index.ts';
import { preferred } from '../../../engine/quantity/index.ts';
import { capital } from '../../../engine/quantity/words.ts';
import { LIMITS } from '../../../engine/refit/limits.ts';
import { askBackOfAnswer, readAnswer } from '../../../engine/refit/read-answer.ts';
import type { SurveyedItem } from '../../../engine/refit/survey.ts';
import { itemFound } from '../../../engine/refit/survey-set.ts';
import type { SurveyItem } from '../../../engine/refit/types.ts';
import { usePerson } from '../../state/person.ts';
import type { Session } from '../../state/session.ts';
import { Choice, CONDITIONS } from './choice.tsx';
import { DraftField } from './draft-field.tsx';
import { More } from './more.tsx';
import { Photos } from './photos.tsx';
import { recordLatest } from './record.ts';

const STATES = { ...CONDITIONS, none: 'none here' } as const;

export function Items({ session, items }: { session: Session; items: readonly SurveyedItem[] }) {
  const group = (title: string, which: 'auxiliary' | 'mark') => (
    <section className="stack">
      <h2>{title}</h2>
      <ul className="survey-list">
        {items
          .filter(({ spec }) => spec.group === which)
          .map((item) => (
            <li key={item.spec.id} className="sheet">
              <ItemCard session={session} {...item} />
            </li>
          ))}
      </ul>
    </section>
  );
  return (
    <>
      {group('What else moves, lights or pumps', 'auxiliary')}
      {group('How good the machine is', 'mark')}
    </>
  );
}

function ItemCard({ session, spec, found }: SurveyedItem & { session: Session }) {
  const save = (make: (before: SurveyItem | undefined) => Partial<SurveyItem>): Promise<boolean> =>
    recordLatest(session, (refit) => itemFound(refit, spec.id, make(refit.survey[spec.id])));
  const answer = (id: string, text: string): Promise<boolean> =>
    save((before) => {
      const { [id]: _old, ...others } = before?.answers ?? {};
      return { answers: text === '' ? others : { ...others, [id]: text } };
    });
  const title = capital(spec.name);
  const questions = Object.entries(spec.questions);
  const answered = questions.filter(([id]) => found?.answers[id]).length;
  const sketch = spec.sketch ? SKETCHES[spec.sketch] : undefined;
  return (
    <>
      <h3>{title}</h3>
      <Choice
        legend={`State of the ${spec.name}`}
        options={STATES}
        value={found?.state}
        onChoose={(state) => void save(() => ({ state }))}
      />
      <More
        of={spec.name}
        words={`${answered} of ${questions.length} questions answered${found?.photos.length ? `, ${found.photos.length} photos` : ''}`}
      >
        {spec.caution && (
          <p className="caution">
            <strong>Take care.</strong> {spec.caution}
          </p>
        )}
        <div className="survey-look">
          <p className="soft">{spec.look}</p>
          {sketch && (
            <svg viewBox="0 0 200 120" role="img" aria-label={sketch.says}>
              {sketch.strokes.map((d) => (
                <path key={d} d={d} />
              ))}
              {sketch.labels.map(([x, y, text]) => (
                <text key={`${x} ${y}`} x={x} y={y}>
                  {text}
                </text>
              ))}
            </svg>
          )}
        </div>
        {questions.map(([id, question]) => (
          <Answer
            key={id}
            of={spec.name}
            draft={`${session.id}.survey.${spec.id}.${id}`}
            question={question}
            recorded={found?.answers[id] ?? ''}
            onSave={(text) => answer(id, text)}
            check={(text) => {
              const read = readAnswer(spec, id, text);
              return read.ok ? undefined : read.problem.message;
            }}
            askBack={(text) => askBackOfAnswer(spec, id, text)}
          />
        ))}
        <Photos
          refit={session.id}
          of={spec.name}
          names={found?.photos ?? []}
          onChange={(photos) => save(() => ({ photos }))}
        />
        <DraftField
          label={`Notes on the ${spec.name}`}
          draft={`${session.id}.survey.${spec.id}`}
          recorded={found?.note ?? ''}
          onSave={(note) => save(() => ({ note }))}
          lines
          most={LIMITS.text}
        />
      </More>
    </>
  );
}

interface AnswerProps {
  readonly of: string;
  readonly draft: string;
  readonly question: SurveyQuestion;
  readonly recorded: string;
  readonly onSave: (text: string) => Promise<boolean>;
  readonly check: (text: string) => string | undefined;
  readonly askBack: (text: string) => string | undefined;
}

function Answer({ of, draft, question, recorded, onSave, check, askBack }: AnswerProps) {
  const { system } = usePerson();
  const label = capital(question.name);
  if (question.kind === 'choice')
    return (
      <div className="survey-field">
        <label>
          {label}
          <span className="hidden"> of the {of}</span>
          <select value={recorded} onChange={(event) => void onSave(event.target.value)}>
            <option value="">don’t know</option>
            {Object.entries(question.options).map(([id, words]) => (
              <option key={id} value={id}>
                {words}
              </option>
            ))}
          </select>
        </label>
      </div>
    );
  const common = { label, draft, recorded, onSave, check, askBack };
  return question.kind === 'text' ? (
    <DraftField {...common} like={question.like} most={LIMITS.text} />
  ) : (
    <DraftField {...common} {...(question.unit === '1' ? {} : { unit: preferred(question.unit, system) })} />
  );
}
