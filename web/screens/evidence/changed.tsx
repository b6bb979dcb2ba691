/** What a recorded measurement changed: facts set, verdicts before and after. */

import { useEffect, useRef } from 'react';
import { Link } from 'wouter';
import type { Finding } from '../../../engine/assess/finding.ts';
import { sayPath } from '../../../engine/assess/words.ts';
import { capital } from '../../../engine/quantity/words.ts';
import { sayMargin } from '../../parts/margin-rule.tsx';
import { VerdictWord } from '../../parts/verdict.tsx';

export interface Moved {
  readonly before: Finding | undefined;
  readonly after: Finding;
}

/** Findings whose verdict, margin or list of what is missing is another now. */
export function movedBetween(before: readonly Finding[], after: readonly Finding[]): Moved[] {
  const old = new Map(before.map((finding) => [finding.id, finding]));
  return after.flatMap((finding): Moved[] => {
    const was = old.get(finding.id);
    const isSame = was?.verdict === finding.verdict && (was.margin ?? null) === (finding.margin ?? null);
    return isSame ? [] : [{ before: was, after: finding }];
  });
}

interface Props {
  readonly home: string;
  readonly again: boolean;
  readonly paths: readonly string[];
  readonly questions: readonly string[];
  readonly moved: readonly Moved[];
  /** Answers that need fewer facts than before, though they are still unknown. */
  readonly nearer: number;
}

export function Changed({ home, again, paths, questions, moved, nearer }: Props) {
  const box = useRef<HTMLElement>(null);
  // It stands below the button that was pressed, perhaps out of sight.
  useEffect(() => {
    box.current?.scrollIntoView({ block: 'nearest' });
  }, []);
  const verdicts = moved.filter(({ before, after }) => before?.verdict !== after.verdict);
  const margins = moved.length - verdicts.length;
  return (
    <section ref={box} className="bench-changed" aria-label="What changed">
      <h2>{again ? 'Recorded anew' : 'Recorded'}</h2>
      <p>
        {paths.length === 0
          ? 'The measurement is kept with its readings. It settles no fact of the refit by itself.'
          : `Kept with its readings. Now measured: ${paths.map(sayPath).join(', ')}.`}
      </p>
      {questions.map((question) => (
        <p key={question} className="caution">
          {capital(question)}
        </p>
      ))}
      {verdicts.length > 0 && (
        <>
          <h3>{verdicts.length === 1 ? 'One answer changed' : `${verdicts.length} answers changed`}</h3>
          <ul className="bench-moved">
            {verdicts.map(({ before, after }) => (
              <li key={after.id}>
                <span>{after.title}</span>
                <span className="row">
                  {before ? (
                    <VerdictWord verdict={before.verdict} />
                  ) : (
                    <span className="soft">not asked</span>
                  )}
                  <span aria-hidden="true">→</span>
                  <span className="hidden">is now</span>
                  <VerdictWord verdict={after.verdict} />
                  {typeof after.margin === 'number' && <strong>{sayMargin(after)}</strong>}
                </span>
              </li>
            ))}
          </ul>
        </>
      )}
      <p className="soft">
        {verdicts.length === 0 && 'No verdict changed by it yet. '}
        {margins > 0 && `${margins} more ${margins === 1 ? 'answer has' : 'answers have'} another margin. `}
        {nearer > 0 &&
          `${nearer} ${nearer === 1 ? 'answer waits' : 'answers wait'} for fewer facts than before.`}
      </p>
      <div className="row">
        <Link href={`${home}/know`} className="button">
          What to find out next
        </Link>
        <Link href={`${home}/evidence`} className="button">
          All bench tests
        </Link>
      </div>
    </section>
  );
}
