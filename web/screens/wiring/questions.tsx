/**
 * What a proposal has to be told, in the order of the job, and what is taken as usual; where one was answered, the keyboard
 * goes on with the next.
 */
import { Fragment, useEffect, useRef, useState } from 'react';
import {
  type AskedFact,
  type AskGroup,
  type Settled,
  stateAll,
  takenGroups,
} from '../../../engine/circuit/whole/index.ts';
import { capital } from '../../../engine/quantity/words.ts';
import type { Session } from '../../state/session.ts';
import { Pager, usePages } from './pager.tsx';
import { type Answers, QuestionForm } from './question.tsx';
import { recordAll } from './record-all.ts';

interface Props {
  readonly session: Session;
  readonly settled: Settled;
}

type Give = (id: string, answers: Answers) => Promise<string | undefined>;

export function Questions({ session, settled }: Props) {
  const { groups, answered, waiting, wiring } = settled;
  const pages = usePages(groups, 30, '');
  const [done, setDone] = useState<ReadonlySet<string>>(new Set());
  const list = useRef<HTMLDivElement>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  /** Place on the page of what was answered last: there the next question is gone on with. */
  const last = useRef<number>(undefined);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another proposal, other questions
  useEffect(() => {
    setDone(new Set());
    if (last.current === undefined) return;
    const items = [...(list.current?.querySelectorAll<HTMLElement>('[data-question]') ?? [])].filter(
      (each) => each.closest('details') === null,
    );
    const next = items[Math.min(last.current, items.length - 1)];
    last.current = undefined;
    // Not where somebody has gone on by himself.
    if (
      document.activeElement !== document.body &&
      document.activeElement?.closest('[data-question]') !== null
    )
      return;
    (next?.querySelector<HTMLElement>('input, select, button') ?? heading.current)?.focus();
  }, [groups]);
  const give =
    (at?: number): Give =>
    async (id, answers) => {
      const wrong = await recordAll(session, (now) => stateAll(now, answers, wiring));
      if (wrong === undefined) {
        last.current = at;
        setDone((before) => new Set([...before, id]));
      }
      return wrong;
    };
  const all = answered + groups.length;
  return (
    <>
      <h3 ref={heading} tabIndex={-1}>
        {groups.length === 0 ? 'Nothing is left to be asked' : `What it has to be told: ${groups.length}`}
      </h3>
      {groups.length > 0 && (
        <p>
          <progress max={all} value={answered} aria-label="Questions answered" />{' '}
          <span>{`${answered} of ${all} answered`}</span>
        </p>
      )}
      {waiting > 0 && (
        <p>
          {waiting} wires wait for an answer and stay unmade until then. What you do not know yet can wait.
        </p>
      )}
      <div className="stack" ref={list}>
        {stagesOf(pages.shown).map(([stage, shown]) => (
          <Fragment key={stage}>
            <h4>{stage}</h4>
            <ul className="wiring-questions">
              {shown.map(([group, at]) => (
                <GroupOf key={group.id} {...{ session, settled, group, done }} give={give(at)} />
              ))}
            </ul>
          </Fragment>
        ))}
      </div>
      <Pager pages={pages} of="questions" />
      <TakenAsUsual {...{ session, settled, done }} give={give()} />
    </>
  );
}

/** In their order, by stage, each with its place on the page. */
function stagesOf(groups: readonly AskGroup[]) {
  const stages = new Map<string, (readonly [AskGroup, number])[]>();
  for (const [at, group] of groups.entries())
    stages.set(group.stage, [...(stages.get(group.stage) ?? []), [group, at]]);
  return [...stages];
}

interface GroupProps extends Props {
  readonly group: AskGroup;
  readonly done: ReadonlySet<string>;
  readonly give: Give;
}

function GroupOf({ session, settled: { wiring }, group, done, give }: GroupProps) {
  const { id, asks, facts, waits, members } = group;
  const form = (key: string, question: string, of: readonly AskedFact[], says: string) => ({
    id: key,
    asks: question,
    facts: of,
    says,
    wiring,
    draft: `${session.id}.answer.${key}`,
    isDone: done.has(key) || done.has(id),
    answer: (answers: Answers) => give(key, answers),
  });
  return (
    <QuestionForm {...form(id, asks, facts, waits)}>
      {members.length > 1 && (
        <details>
          <summary>Each by itself: {members.length}</summary>
          <ul className="wiring-questions">
            {facts.flatMap((fact) =>
              fact.questions.map((question) => (
                <QuestionForm
                  key={question.id}
                  {...form(question.id, question.asks, [{ ...fact, questions: [question] }], '')}
                />
              )),
            )}
          </ul>
        </details>
      )}
    </QuestionForm>
  );
}

/** What nobody was asked; each can be said to be otherwise. */
function TakenAsUsual({ session, settled: { taken, wiring }, done, give }: Omit<GroupProps, 'group'>) {
  const groups = takenGroups(taken, wiring);
  if (groups.length === 0) return null;
  return (
    <details data-taken>
      <summary>Taken as usual: {groups.length}; change what differs</summary>
      <p className="small">
        Nobody is asked these, since they are nearly always so, and no harm comes of it where they are not.
        They are recorded with the wires.
      </p>
      <ul className="wiring-questions">
        {groups.map(({ id, name, value, because, questions }) => (
          <QuestionForm
            key={id}
            id={`usual: ${id}`}
            asks={`${capital(name)} (${questions.map(({ place }) => ('id' in place ? place.id : '')).join(', ')})`}
            facts={[
              {
                setting: questions[0]!.place.setting,
                name,
                questions,
                ...(questions[0]!.unit === undefined ? {} : { unit: questions[0]!.unit }),
                ...(questions[0]!.options === undefined ? {} : { options: questions[0]!.options }),
              },
            ]}
            says={because}
            wiring={wiring}
            draft={`${session.id}.usual.${id}`}
            isDone={done.has(id)}
            start={{ [questions[0]!.place.setting]: value }}
            verb="Change"
            answer={(answers) => give(id, answers)}
          />
        ))}
      </ul>
    </details>
  );
}
