/** Dead or asleep: tap a symptom, then answers; the cheapest telling test comes next. */
import { useState } from 'react';
import { Link } from 'wouter';
import {
  type Diagnosis,
  diagnose,
  SKIP,
  SYMPTOM,
  SYMPTOMS,
  type Symptom,
} from '../../engine/advice/faults/index.ts';
import './advice.css';

const KEEP = 'fettle-fault';
type Answers = Readonly<Record<string, string>>;

/** Where somebody was stays for this window: a phone by the machine is put down and taken up again. */
function recalled(refit: string): { symptom?: string; answers: Answers } {
  try {
    const kept = JSON.parse(sessionStorage.getItem(`${KEEP} ${refit}`) ?? '{}') as {
      symptom?: unknown;
      answers?: unknown;
    };
    const symptom = typeof kept.symptom === 'string' ? SYMPTOM.get(kept.symptom) : undefined;
    const answers = kept.answers as Answers | undefined;
    if (symptom && answers && diagnose(symptom, answers).ok) return { symptom: symptom.id, answers };
  } catch {
    return { answers: {} };
  }
  return { answers: {} };
}

export function Fault({ refit }: { refit: string }) {
  const [state, setState] = useState(() => recalled(refit));
  const go = (symptom: string | undefined, answers: Answers): void => {
    const now = { ...(symptom === undefined ? {} : { symptom }), answers };
    sessionStorage.setItem(`${KEEP} ${refit}`, JSON.stringify(now));
    setState(now);
  };
  const symptom = state.symptom === undefined ? undefined : SYMPTOM.get(state.symptom);
  return (
    <div className="stack fault">
      <div>
        <h1>Dead, or only asleep?</h1>
        <p>
          A blown fuse, an open door or a lost reference looks like a dead part. The cheapest test that tells
          most comes first; what is likely is common practice, without a source.
        </p>
      </div>
      {symptom ? (
        <Tree symptom={symptom} answers={state.answers} go={go} refit={refit} />
      ) : (
        <ul className="taps">
          {SYMPTOMS.map(({ id, title, about }) => (
            <li key={id}>
              <button type="button" onClick={() => go(id, {})}>
                <span>
                  <strong>{title}</strong>
                  <br />
                  <span className="small soft">{about}</span>
                </span>
              </button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

interface TreeProps {
  readonly symptom: Symptom;
  readonly answers: Answers;
  readonly go: (symptom: string | undefined, answers: Answers) => void;
  readonly refit: string;
}

function Tree({ symptom, answers, go, refit }: TreeProps) {
  const found = diagnose(symptom, answers);
  if (!found.ok) return <p role="alert">{found.problem.message}</p>;
  const diagnosis = found.value;
  const back = (id: string): void => {
    const at = Object.keys(answers).indexOf(id);
    go(symptom.id, Object.fromEntries(Object.entries(answers).slice(0, at)));
  };
  return (
    <>
      <div className="row spread">
        <h2>{symptom.title}</h2>
        <button type="button" onClick={() => go(undefined, {})}>
          Another symptom
        </button>
      </div>
      {diagnosis.asked.length > 0 && (
        <ol className="steps">
          {diagnosis.asked.map(({ id, question, answer }) => (
            <li key={id} className="row spread">
              <span>
                {question} <strong>{answer}</strong>
              </span>
              <button
                type="button"
                className="plain"
                onClick={() => back(id)}
                aria-label={`Answer again: ${question}`}
              >
                Answer again
              </button>
            </li>
          ))}
        </ol>
      )}
      <div aria-live="polite" className="stack">
        {diagnosis.next && (
          <Next
            next={diagnosis.next}
            answer={(text) => go(symptom.id, { ...answers, [diagnosis.next!.id]: text })}
          />
        )}
        {diagnosis.end && <End end={diagnosis.end} refit={refit} />}
      </div>
      {diagnosis.remaining.length > 1 && <Remaining remaining={diagnosis.remaining} />}
    </>
  );
}

function Next({ next, answer }: { next: NonNullable<Diagnosis['next']>; answer: (text: string) => void }) {
  const { test } = next;
  return (
    <section className="sheet">
      <h3>{test.question}</h3>
      {test.caution && (
        <p className="caution">
          <strong>Take care.</strong> {test.caution}
        </p>
      )}
      <p>{test.how}</p>
      <p className="small soft">
        With: {test.tool}. {next.why}
      </p>
      <ul className="taps">
        {next.possible.map((id) => (
          <li key={id}>
            <button type="button" onClick={() => answer(id)}>
              {test.answers[id]!.says}
            </button>
          </li>
        ))}
        <li>
          <button type="button" className="plain" onClick={() => answer(SKIP)}>
            I cannot do this test
          </button>
        </li>
      </ul>
    </section>
  );
}

function End({ end, refit }: { end: NonNullable<Diagnosis['end']>; refit: string }) {
  return (
    <section className="sheet">
      <h3>{end.is === 'cause' ? 'This is what it is' : 'Somebody else can tell'}</h3>
      <p>{end.sentence}</p>
      <p className="small soft">
        Once you know, note the part’s condition in the <Link href={`/refit/${refit}/survey`}>survey</Link>,
        and keep, repair or replace follows from it.
      </p>
    </section>
  );
}

function Remaining({ remaining }: { remaining: Diagnosis['remaining'] }) {
  return (
    <section>
      <h3>What it can be</h3>
      <table>
        <caption className="hidden">What remains, likeliest first</caption>
        <thead>
          <tr>
            <th scope="col">Cause</th>
            <th scope="col">Dead?</th>
            <th scope="col" className="number">
              Share
            </th>
          </tr>
        </thead>
        <tbody>
          {remaining.map(({ id, says, is, share }) => (
            <tr key={id}>
              <td>{says}</td>
              <td>{is}</td>
              <td className="number">{Math.round(100 * share)} %</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
