/** The bench tests by what they are on, what each would settle in this refit, and what was measured already. */

import { useEffect, useState } from 'react';
import { Link } from 'wouter';
import { PLACES, type PlaceId } from '../../../engine/parts/index.ts';
import { capital } from '../../../engine/quantity/words.ts';
import type { Evidence } from '../../../engine/refit/types.ts';
import { workOut } from '../../state/bench.ts';
import type { Session, View } from '../../state/session.ts';
import type { BenchSheet } from '../../worker/bench-protocol.ts';
import { grouped } from './groups.ts';
import { sayResult } from './outcome.tsx';
import { sayDay } from './say.ts';
import { type Wanted, wantedOf } from './settles.ts';

interface Props {
  readonly session: Session;
  readonly view: View;
  readonly sheets: readonly BenchSheet[];
}

export function List({ session, view, sheets }: Props) {
  const evidence = Object.values(view.refit.evidence);
  const wanted = new Map(sheets.map((sheet) => [sheet.id, wantedOf(view, sheet)]));
  const useful = sheets.filter(({ id }) => (wanted.get(id)?.length ?? 0) > 0).length;
  return (
    <div className="bench stack">
      <div>
        <h1>Bench tests</h1>
        <p>
          What no plate tells, you can measure at home without the old control: with a meter, a drill, a rule
          and a spring scale. Each test says first what can hurt, then how well its answer is known.
        </p>
        <p className="soft">
          {useful > 0
            ? `${useful} of ${sheets.length} tests would settle or sharpen something in this refit now.`
            : 'Nothing in this refit waits for a measurement now.'}
        </p>
      </div>
      {grouped(sheets).map(({ title, sheets: own }) => (
        <section key={title} className="stack" aria-labelledby={`bench-${title}`}>
          <h2 id={`bench-${title}`}>{title}</h2>
          <ul className="bench-cards">
            {own.map((sheet) => (
              <li key={sheet.id} className="sheet">
                <Card
                  session={session}
                  view={view}
                  sheet={sheet}
                  wanted={wanted.get(sheet.id) ?? []}
                  evidence={evidence.filter(({ method }) => method === sheet.id)}
                />
              </li>
            ))}
          </ul>
        </section>
      ))}
    </div>
  );
}

interface CardProps {
  readonly session: Session;
  readonly view: View;
  readonly sheet: BenchSheet;
  readonly wanted: readonly Wanted[];
  readonly evidence: readonly Evidence[];
}

function Card({ session, view, sheet, wanted, evidence }: CardProps) {
  const page = `/refit/${session.id}/evidence/${sheet.id}`;
  const [first] = wanted;
  const subject = first?.path.split('.').slice(0, -1).join('.');
  return (
    <>
      <h3>
        <Link href={subject === undefined ? page : `${page}?for=${encodeURIComponent(subject)}`}>
          {sheet.title}
        </Link>
      </h3>
      <p>{sheet.purpose}</p>
      {wanted.length > 0 && (
        <ul className="bench-wanted">
          {wanted.map(({ path, name, state, answers }) => (
            <li key={path}>
              <Link href={`${page}?for=${encodeURIComponent(path.split('.').slice(0, -1).join('.'))}`}>
                {capital(name)}
              </Link>{' '}
              <span className="small soft">
                {state === 'unknown' ? 'not known: ' : 'in doubt: '}
                {answers}{' '}
                {state === 'unknown'
                  ? answers === 1
                    ? 'answer waits'
                    : 'answers wait'
                  : answers === 1
                    ? 'answer rests on it'
                    : 'answers rest on it'}
              </span>
            </li>
          ))}
        </ul>
      )}
      {evidence.length > 0 && (
        <ul className="bench-recorded" aria-label={`Recorded: ${sheet.title}`}>
          {evidence.map((each) => (
            <li key={each.id}>
              <Recorded session={session} view={view} evidence={each} page={page} />
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

interface RecordedProps {
  readonly session: Session;
  readonly view: View;
  readonly evidence: Evidence;
  readonly page: string;
}

function Recorded({ session, view, evidence, page }: RecordedProps) {
  const [text, setText] = useState('');
  useEffect(() => {
    let current = true;
    const { method, given, readings, aside } = evidence;
    workOut(session, method, { given, readings, aside }).then(
      ({ outcome, problem }) => {
        if (!current) return;
        const [verdict] = outcome?.verdicts ?? [];
        const values = outcome?.results.map(sayResult).join(', ');
        setText(values || verdict?.sentence || problem?.message || 'no result');
      },
      () => current && setText('cannot be worked out'),
    );
    return () => {
      current = false;
    };
  }, [session, evidence]);
  return (
    <>
      <Link href={`${page}?open=${encodeURIComponent(evidence.id)}`}>
        {sayDay(evidence.when)}
        {evidence.part !== null && `, ${sayPart(view, evidence.part)}`}
      </Link>{' '}
      <strong>{text || '…'}</strong>
    </>
  );
}

function sayPart(view: View, id: string): string {
  const part = view.refit.parts[id];
  if (!part) return 'a part that is gone';
  return part.name || PLACES[part.kind as PlaceId]?.name || id;
}
