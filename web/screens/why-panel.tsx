/** The working of one finding: sentence, formulas with numbers, what it rests on, and what would make it fit. */

import { memo, useEffect, useMemo, useRef, useState } from 'react';
import type { Doubt, Remedy, Why } from '../../engine/assess/index.ts';
import { askBackOfPolicy } from '../../engine/assess/set-policy.ts';
import { heavyGuesses, sayDoubt, sayGuesses } from '../../engine/assess/words.ts';
import { factSpec } from '../../engine/parts/index.ts';
import { capital } from '../../engine/quantity/words.ts';
import { AskBack, focusOn, useAskBack } from '../parts/ask-back.tsx';
import { FactField } from '../parts/fact-field.tsx';
import { Formula } from '../parts/formula.tsx';
import { Scroll } from '../parts/scroll.tsx';
import { VerdictWord } from '../parts/verdict.tsx';
import { keepDraft, readDraft } from '../state/drafts.ts';
import type { Session, View } from '../state/session.ts';

interface Props {
  readonly session: Session;
  readonly view: View;
  readonly id: string;
}

export function WhyPanel({ session, view, id }: Props) {
  const [why, setWhy] = useState<Why | null>(null);
  const first = useRef(true);
  const { shown } = view;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new snapshot is a new working
  useEffect(() => {
    let current = true;
    // The first working comes at once; while somebody types it follows when the hand rests.
    const rest = setTimeout(
      () => {
        session.why(id).then(
          (got) => current && setWhy(got),
          () => undefined,
        );
      },
      first.current ? 0 : 120,
    );
    first.current = false;
    return () => {
      current = false;
      clearTimeout(rest);
    };
  }, [session, id, shown]);
  const [weakest, firmer] = useMemo(() => {
    const weak = (row: Why['facts'][number]): boolean =>
      row.basis === undefined || row.basis === 'guess' || row.basis === 'told';
    return [why?.facts.filter(weak) ?? [], why?.facts.filter((row) => !weak(row)) ?? []];
  }, [why]);
  if (!why)
    return (
      <p role="status" className="soft">
        Working it out …
      </p>
    );
  const { finding } = why;
  const main = why.steps.slice(-1);
  const before = why.steps.slice(0, -1);
  return (
    <section aria-labelledby="why" className="stack">
      <div className="sheet">
        <div className="row spread">
          <h2 id="why">Why: {finding.title.toLowerCase()}</h2>
          <VerdictWord verdict={finding.verdict} />
        </div>
        <p>
          <strong>{finding.sentence}</strong>
        </p>
        {why.caution && (
          <p className="caution">
            <strong>Take care.</strong> {why.caution}
          </p>
        )}
        <p>{why.why}</p>
        {finding.chance !== undefined && (
          <p className="soft">Chance that it fits: {sayChance(finding.chance)}.</p>
        )}
        {finding.doubts && <Doubts doubts={finding.doubts} />}
        {finding.guesses.length > 0 && (
          <p
            className={heavyGuesses(finding).length > 0 ? 'verdict tight' : 'soft'}
            style={{ whiteSpace: 'normal' }}
          >
            {sayGuesses(finding)}
          </p>
        )}
        <ol className="steps">
          {main.map((step) => (
            <StepItem key={step.id} step={step} />
          ))}
        </ol>
        {before.length > 0 && (
          <details>
            <summary>
              The {before.length} {before.length === 1 ? 'step' : 'steps'} before it
            </summary>
            <ol className="steps">
              {before.map((step) => (
                <StepItem key={step.id} step={step} />
              ))}
            </ol>
          </details>
        )}
      </div>
      {finding.missing.length > 0 && (
        <div className="sheet">
          <h2>What has to be known</h2>
          {finding.missing.map((path) => (
            <Missing key={path} session={session} view={view} path={path} />
          ))}
        </div>
      )}
      <Remedies session={session} view={view} id={id} />
      <div className="sheet">
        <h2>What it rests on</h2>
        <FactTable rows={weakest} />
        {firmer.length > 0 && (
          <details>
            <summary>
              {weakest.length === 0 ? 'Show' : 'Show also'} the {firmer.length} facts that stand firmer
            </summary>
            <FactTable rows={firmer} />
          </details>
        )}
        {why.stated.length > 0 && (
          <details>
            <summary>Numbers from tables</summary>
            <table>
              <tbody>
                {why.stated.map((row) => (
                  <tr key={row.name + row.text}>
                    <td>{capital(row.name)}</td>
                    <td>{row.text}</td>
                    <td className="small soft">{row.source}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </details>
        )}
        {why.policies.map((row) => (
          <Habit
            key={row.id}
            session={session}
            view={view}
            id={row.id}
            name={row.name}
            text={row.text}
            usual={row.usual}
            why={row.why}
            source={row.source}
          />
        ))}
      </div>
    </section>
  );
}

const FactTable = memo(function FactTable({ rows }: { rows: Why['facts'] }) {
  if (rows.length === 0) return null;
  return (
    <Scroll label="What it depends on, a table">
      <table>
        <thead>
          <tr>
            <th>Fact</th>
            <th>As entered</th>
            <th>Basis</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.path}>
              <td>
                {capital(row.name)}
                {row.note && <div className="small soft">{row.note}</div>}
              </td>
              <td>{row.text ?? '–'}</td>
              <td>
                {row.basis ? (
                  <span className={`basis ${row.basis}`}>{row.basis}</span>
                ) : (
                  <span className="soft">unknown</span>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
});

/** Where the doubt comes from, as bars: what to measure to be surer. */
function Doubts({ doubts }: { doubts: readonly Doubt[] }) {
  return (
    <details className="doubts">
      <summary>Where the doubt comes from</summary>
      <table>
        <tbody>
          {doubts.slice(0, 6).map(({ source, share }) => (
            <tr key={source}>
              <td>{capital(sayDoubt(source))}</td>
              <td>
                <meter
                  min={0}
                  max={1}
                  value={share}
                  aria-label={`${(100 * share).toFixed(0)} % of the doubt`}
                />
              </td>
              <td>{(100 * share).toFixed(0)} %</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

const sayChance = (chance: number): string =>
  chance > 0.995 ? 'over 99.5 %' : chance < 0.005 ? 'under 0.5 %' : `${(100 * chance).toFixed(0)} %`;

const StepItem = memo(function StepItem({ step }: { step: Why['steps'][number] }) {
  return (
    <li>
      <strong>{capital(step.name)}</strong> <span className="small soft">{step.heading}</span>
      <Formula tex={step.tex} plain={step.plain} />
      <Formula tex={step.texWithNumbers} plain={step.plainWithNumbers} />
      {step.text && (
        <p>
          Result: <strong>{step.text}</strong>
        </p>
      )}
      {step.says && <p className="soft">{step.says}</p>}
      {step.source && <p className="small soft">Source: {step.source}</p>}
    </li>
  );
});

function Missing({ session, view, path }: Omit<Props, 'id'> & { path: string }) {
  const pieces = path.split('.');
  const spec = factSpec(pieces.at(-2) ?? '', pieces.at(-1)!);
  if (!spec) {
    return (
      <div className="field">
        <strong>Is there one in the place {path}?</strong>
        <div className="row">
          <button type="button" onClick={() => void session.commit(path, 'fitted')}>
            There is one
          </button>
          <button type="button" onClick={() => void session.commit(path, 'none')}>
            There is none
          </button>
        </div>
      </div>
    );
  }
  return <FactField session={session} view={view} path={path} spec={spec} fact={undefined} guide />;
}

/** A policy beside the finding that uses it: shown, explained, changed in place. */
export function Habit({
  session,
  view,
  id,
  name,
  text,
  usual,
  why,
  source,
}: {
  session: Session;
  view: View;
  id: string;
  name: string;
  text: string;
  usual: string;
  why: string;
  source: string;
}) {
  const [waiting] = useState(() => readDraft(`${session.id}.policy.${id}`));
  const back = useAskBack((now) => askBackOfPolicy(id, now), waiting);
  const [typed, setTyped] = useState(back.asked?.text ?? text);
  const isAsked = useRef(false);
  isAsked.current = back.asked !== undefined;
  useEffect(() => {
    if (!isAsked.current) setTyped(text);
  }, [text]);
  const field = `policy-${id}`;
  const draft = `${session.id}.policy.${id}`;
  const drop = (): void => {
    back.drop();
    keepDraft(draft, undefined);
  };
  const save = (): void => {
    if (typed.trim() === text || typed.trim() === '') {
      setTyped(text);
      drop();
    } else if (back.holds(typed)) keepDraft(draft, typed);
    else {
      keepDraft(draft, undefined);
      void session.commit(`policies.${id}`, typed);
    }
  };
  const problem = view.reading?.path === `policies.${id}` ? view.reading.problem : undefined;
  return (
    <div className="field">
      <label htmlFor={field}>{capital(name)}</label>
      <p className="small soft">
        {why} Usual: {usual}. {source}.
      </p>
      <div className="row">
        <input
          id={field}
          value={typed}
          style={{ maxWidth: '10rem' }}
          aria-invalid={problem !== undefined}
          aria-describedby={back.asked ? `${field}-asked ${field}-said` : `${field}-said`}
          onChange={(event) => {
            setTyped(event.target.value);
            drop();
          }}
          onKeyDown={(event) => {
            if (event.key === 'Enter') save();
            if (event.key === 'Escape') {
              setTyped(text);
              drop();
            }
          }}
          onBlur={save}
        />
        {text !== usual && (
          <button
            type="button"
            className="plain"
            onClick={() => void session.commit(`policies.${id}`, 'usual')}
          >
            Back to usual
          </button>
        )}
      </div>
      <AskBack
        id={`${field}-asked`}
        says={back.asked?.says}
        onAnyway={() => {
          back.allow(typed);
          save();
          focusOn(field);
        }}
        onChange={() => focusOn(field)}
      />
      <p id={`${field}-said`} className="said" aria-live="polite">
        {problem && <span className="bad">{problem.message}</span>}
      </p>
    </div>
  );
}

/** The search tries hundreds of values; it shows how far it is and can be given up. */
function Remedies({ session, view, id }: Props) {
  const verdict = view.recorded.findings.find((finding) => finding.id === id)?.verdict;
  const [found, setFound] = useState<readonly Remedy[]>();
  const [progress, setProgress] = useState(0);
  const search = useRef<AbortController>(undefined);
  const { recorded } = view;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new record is a new search
  useEffect(() => {
    setFound(undefined);
    setProgress(0);
    if (verdict !== 'fails' && verdict !== 'tight') return;
    const control = new AbortController();
    search.current = control;
    session.engine
      .ask('remedies', { id }, { signal: control.signal, progress: setProgress })
      .then(setFound, () => undefined);
    return () => control.abort();
  }, [session, id, verdict, recorded]);
  if (verdict !== 'fails' && verdict !== 'tight') return null;
  return (
    <div>
      <h2>What would make it fit</h2>
      {found === undefined && (
        <div className="row">
          <progress value={progress} max={1} aria-label="Search for remedies" />
          <button
            type="button"
            onClick={() => {
              search.current?.abort();
              setFound([]);
            }}
          >
            Stop looking
          </button>
        </div>
      )}
      {found?.length === 0 && (
        <p className="soft">
          No single change was found. Two together might do it: try one that helps and look again.
        </p>
      )}
      <ul className="findings">
        {found?.map((remedy) => (
          <li key={remedy.says} className="row spread" style={{ padding: '0.5rem 0' }}>
            <span style={{ flex: '1 1 12rem' }}>
              {capital(remedy.says)}
              <br />
              <span className="small soft">{sayChanges(remedy)}</span>
            </span>
            <button type="button" onClick={() => void session.tryRemedy(remedy)}>
              Try it
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}

function sayChanges(remedy: Remedy): string {
  if (remedy.changes.length === 0) return 'everything else keeps its verdict';
  const shown = remedy.changes
    .slice(0, 3)
    .map((change) => `${change.title} (${change.id.split('.')[0]}): ${change.before} → ${change.after}`);
  const more = remedy.changes.length - shown.length;
  return `${shown.join('; ')}${more > 0 ? `; and ${more} more` : ''}`;
}
