/** Every open question of a proposal; where one was answered, the keyboard goes on with the next. */
import { useEffect, useRef, useState } from 'react';
import { type Settled, state } from '../../../engine/circuit/whole/index.ts';
import type { Question } from '../../../engine/circuit/wiring/index.ts';
import type { Wiring } from '../../../engine/refit/types.ts';
import type { Session } from '../../state/session.ts';
import { Pager, usePages } from './pager.tsx';
import { QuestionForm } from './question.tsx';
import { recordAll } from './record-all.ts';

export function Questions({
  session,
  settled: { open, waiting },
  wiring,
}: {
  session: Session;
  settled: Settled;
  wiring: Wiring;
}) {
  const pages = usePages(open, 9, '');
  const [done, setDone] = useState<ReadonlySet<string>>(new Set());
  const list = useRef<HTMLUListElement>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  /** Place on the page of what was answered last: there the next question is gone on with. */
  const last = useRef<number>(undefined);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another proposal, other questions
  useEffect(() => {
    setDone(new Set());
    if (last.current === undefined) return;
    const items = list.current?.querySelectorAll<HTMLElement>('[data-question]') ?? [];
    const next = items[Math.min(last.current, items.length - 1)];
    last.current = undefined;
    // Not where somebody has gone on by himself.
    if (
      document.activeElement !== document.body &&
      document.activeElement?.closest('[data-question]') !== null
    )
      return;
    (next?.querySelector<HTMLElement>('input, select, button') ?? heading.current)?.focus();
  }, [open]);
  const answer = async (question: Question, at: number, text: string): Promise<string | undefined> => {
    const wrong = await recordAll(session, (now) => state(now, question.place, text, wiring));
    if (wrong === undefined) {
      last.current = at;
      setDone((before) => new Set([...before, question.id]));
    }
    return wrong;
  };
  return (
    <>
      <h3 ref={heading} tabIndex={-1}>
        {open.length === 0 ? 'Nothing is left to be asked' : `What it has to be told: ${open.length}`}
      </h3>
      {waiting > 0 && (
        <p>
          {waiting} wires wait for an answer and stay unmade until then. What you do not know yet can wait.
        </p>
      )}
      <ul className="wiring-questions" ref={list}>
        {pages.shown.map((each, at) => (
          <QuestionForm
            key={each.question.id}
            open={each}
            wiring={wiring}
            draft={`${session.id}.answer.${each.question.id}`}
            isDone={done.has(each.question.id)}
            answer={(text) => answer(each.question, at, text)}
          />
        ))}
      </ul>
      <Pager pages={pages} of="questions" />
    </>
  );
}
