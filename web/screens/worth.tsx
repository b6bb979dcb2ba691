/** Is it worth it: what stops it first, then what it may cost against what it is worth, each item to be confirmed. */
import type { Worth as Answer, CostLine, Stopper } from '../../engine/advice/index.ts';
import { POLICY } from '../../engine/checks/policies.ts';
import { factSpec } from '../../engine/parts/index.ts';
import { sayMoney } from '../../engine/quantity/money.ts';
import { findFact } from '../../engine/refit/place.ts';
import { FactField } from '../parts/fact-field.tsx';
import type { Session, View } from '../state/session.ts';
import { useAsked } from '../state/use-asked.ts';
import { Habit } from './why-panel.tsx';
import './advice.css';

interface Props {
  readonly session: Session;
  readonly view: View;
}

const LEVEL = { stops: 'Stops it', unknown: 'Not known', close: 'Close' } as const;
const FROM = {
  entered: 'entered',
  parts: 'added from the prices of the parts',
  usual: 'usual value, a guess',
  none: 'not known',
} as const;

export function Worth({ session, view }: Props) {
  const { answer, fault } = useAsked(session, view, 'worth', null);
  return (
    <div className="stack">
      <div>
        <h1>Is it worth it?</h1>
        <p role="status">{fault ?? answer?.sentence ?? 'Working it out …'}</p>
        {answer?.total && answer.currency && <Range answer={answer} total={answer.total} />}
      </div>
      {answer && <Whole session={session} view={view} answer={answer} />}
    </div>
  );
}

function Whole({ session, view, answer }: Props & { answer: Answer }) {
  const policy = POLICY.get('contingency')!;
  return (
    <>
      <section className="sheet">
        <h2>What may stop it</h2>
        {answer.stoppers.length === 0 && <p>Nothing that was asked stands against it.</p>}
        <ul className="steps">
          {answer.stoppers.map((stopper) => (
            <li key={stopper.title}>
              <StopperRow session={session} view={view} stopper={stopper} />
            </li>
          ))}
        </ul>
      </section>
      <section className="sheet">
        <h2>Price and worth</h2>
        {['job.worth', 'job.asked'].map((path) => (
          <Field key={path} session={session} view={view} path={path} />
        ))}
      </section>
      <section className="sheet">
        <h2>What it may cost</h2>
        <p className="soft">
          Lowest, likely and highest. A usual value is a guess: put your own in its place, or take it as
          yours.
        </p>
        {answer.lines.map((line) => (
          <Line key={line.id} session={session} view={view} line={line} />
        ))}
        <Habit
          session={session}
          view={view}
          id={policy.id}
          name={policy.name}
          usual={policy.usual}
          text={view.refit.policies[policy.id] ?? policy.usual}
          why={policy.why}
          source={policy.source}
        />
      </section>
      {answer.doubt.length > 0 && (
        <section className="sheet">
          <h2>What doubt remains</h2>
          <ul>
            {answer.doubt.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

function StopperRow({ session, view, stopper }: Props & { stopper: Stopper }) {
  return (
    <>
      <p>
        <strong className={stopper.level === 'stops' ? 'bad' : undefined}>
          {LEVEL[stopper.level]}: {stopper.title.toLowerCase()}.
        </strong>{' '}
        {stopper.sentence}
      </p>
      <details open={false}>
        <summary>{stopper.level === 'unknown' ? 'Enter it' : 'Look at the numbers'}</summary>
        {stopper.paths.map((path) => (
          <Field key={path} session={session} view={view} path={path} />
        ))}
      </details>
    </>
  );
}

function Field({ session, view, path, aside }: Props & { path: string; aside?: string }) {
  const [place = '', fact = ''] = path.split('.');
  const spec = factSpec(place, fact);
  if (!spec) return null;
  return (
    <FactField
      session={session}
      view={view}
      path={path}
      spec={spec}
      fact={findFact(view.refit, path) ?? undefined}
      {...(aside === undefined ? {} : { aside })}
    />
  );
}

function Line({ session, view, line }: Props & { line: CostLine }) {
  const { money, from, guess, path } = line;
  const sound = from === 'usual' && !guess;
  const aside = `${money ? sayMoney(money) : ''}${money ? '; ' : ''}${sound ? 'known to be sound' : FROM[from]}`;
  return (
    <>
      <Field session={session} view={view} path={path} aside={aside} />
      {from === 'usual' && guess && money && (
        <button
          type="button"
          className="plain"
          onClick={() =>
            void session.commit(path, `${money.low}–${money.likely}–${money.high} ${money.currency}`, 'told')
          }
        >
          Take {money.low} to {money.high} {money.currency} as mine for {line.name}
        </button>
      )}
    </>
  );
}

/** The range of the cost over what it is worth, on one scale; the sentence above says the same. */
function Range({ answer, total }: { answer: Answer; total: NonNullable<Answer['total']> }) {
  const price = answer.asked?.likely ?? 0;
  const most = 1.08 * Math.max(total.high + price, answer.worth?.high ?? 0, 1);
  const x = (value: number): number => 2 + (296 * value) / most;
  const bar = (low: number, high: number): number => Math.max(2, x(high) - x(low));
  return (
    <figure className="range">
      <svg viewBox="0 0 300 44" aria-hidden="true">
        <line x1="2" x2="298" y1="40" y2="40" stroke="var(--hairline)" />
        <rect
          x={x(total.low + price)}
          width={bar(total.low, total.high)}
          y="6"
          height="12"
          rx="3"
          fill="var(--accent)"
        />
        <line
          x1={x(total.middle + price)}
          x2={x(total.middle + price)}
          y1="3"
          y2="21"
          stroke="var(--ink)"
          strokeWidth="2"
        />
        {answer.worth && (
          <rect
            x={x(answer.worth.low)}
            width={bar(answer.worth.low, answer.worth.high)}
            y="26"
            height="10"
            rx="3"
            fill="none"
            stroke="var(--ink)"
            strokeWidth="1.5"
          />
        )}
      </svg>
      <figcaption className="small soft">
        Filled: what it takes with the price, in eight cases of ten; the stroke is the middle
        {answer.worth ? '. Outlined: what it is worth to you.' : '.'}
      </figcaption>
    </figure>
  );
}
