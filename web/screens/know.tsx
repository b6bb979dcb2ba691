/** Know: the next few facts that settle most, then everything by place. */

import { type ReactNode, useState } from 'react';
import type { Step } from '../../engine/assess/index.ts';
import { sayChain } from '../../engine/assess/words.ts';
import { factSpec, PLACES, type PlaceId } from '../../engine/parts/index.ts';
import type { PartKind } from '../../engine/parts/types.ts';
import { capital } from '../../engine/quantity/words.ts';
import type { Chain, Part, Place } from '../../engine/refit/types.ts';
import { AddSpindle } from '../parts/add-spindle.tsx';
import { FactField } from '../parts/fact-field.tsx';
import { Counts } from '../parts/verdict.tsx';
import type { Session, View } from '../state/session.ts';
import { DutyProposal } from './duty-proposal.tsx';
import { MeasureIt } from './evidence/measure-it.tsx';
import { KnowPages } from './know-pages.tsx';
import { PartPanel } from './part-panel.tsx';

interface Props {
  readonly session: Session;
  readonly view: View;
}

export function Know({ session, view }: Props) {
  const [skipped, setSkipped] = useState<ReadonlySet<string>>(new Set());
  const steps = view.recorded.next.filter((step) => !skipped.has(step.path)).slice(0, 4);
  return (
    <div className="stack">
      <div>
        <h1>What should you find out next?</h1>
        {view.refit.about && <p className="soft">{view.refit.about}</p>}
        <p>
          {steps.length > 0
            ? 'These few facts settle the most answers for the least trouble. What you do not know you can leave.'
            : 'Nothing is waiting for a fact.'}
        </p>
        <Counts counts={view.recorded.counts} />
        <KnowPages refit={session.id} />
      </div>
      <DutyProposal session={session} view={view} />
      <ol className="cards">
        {steps.map((step) => (
          <li key={step.path} className="sheet asked">
            <Ask session={session} view={view} step={step} />
            <MeasureIt session={session} path={step.path} />
            <button
              type="button"
              className="plain"
              onClick={() => setSkipped(new Set([...skipped, step.path]))}
            >
              Don’t know: ask me something else
            </button>
          </li>
        ))}
      </ol>
      {skipped.size > 0 && (
        <button type="button" className="plain" onClick={() => setSkipped(new Set())}>
          Ask again what I left out
        </button>
      )}
      <section aria-labelledby="places" className="stack">
        <h2 id="places">Everything, place by place</h2>
        {view.refit.chains.map((chain) => (
          <Group
            key={chain.id}
            session={session}
            view={view}
            title={capital(sayChain(chain))}
            chain={chain}
            places={chain.places}
          />
        ))}
        <Group session={session} view={view} title="Whole machine" chain={null} places={view.refit.places} />
        <AddSpindle session={session} view={view} />
      </section>
    </div>
  );
}

/** The part in a place, by the path of a fact. */
function partAt(view: View, path: string): Part | undefined {
  const [, place, axis] = path.split('.').reverse() as [string, string, string | undefined];
  const places = axis ? view.refit.chains.find((chain) => chain.id === axis)?.places : view.refit.places;
  const chosen = places?.[place]?.chosen;
  return chosen ? view.refit.parts[chosen] : undefined;
}

function Ask({ session, view, step }: Props & { step: Step }) {
  const pieces = step.path.split('.');
  const spec = factSpec(pieces.at(-2) ?? '', pieces.at(-1)!);
  const n = step.waiting.length;
  const [most] = step.carries ?? [];
  const aside = !step.doubtful
    ? `${n} ${n === 1 ? 'answer waits' : 'answers wait'}`
    : most && most.share > 0
      ? `carries ${(100 * most.share).toFixed(0)} % of the doubt in “${most.title}”${n > 1 ? ` and some in ${n - 1} more` : ''}`
      : `now a guess; ${n} ${n === 1 ? 'answer rests' : 'answers rest'} on it`;
  if (!spec) {
    return (
      <div className="field">
        <strong>{capital(step.name)}?</strong>
        <p className="soft">{step.findOut}</p>
        <div className="row">
          <button type="button" onClick={() => void session.commit(step.path, 'fitted')}>
            There is one
          </button>
          <button type="button" onClick={() => void session.commit(step.path, 'none')}>
            There is none
          </button>
        </div>
      </div>
    );
  }
  const part = partAt(view, step.path);
  return (
    <>
      <h2>{capital(step.name)}</h2>
      <FactField
        session={session}
        view={view}
        path={step.path}
        spec={spec}
        fact={part?.facts[pieces.at(-1)!]}
        guide
        titled
        aside={aside}
      />
    </>
  );
}

interface GroupProps extends Props {
  readonly title: string;
  readonly chain: Chain | null;
  readonly places: Readonly<Record<string, Place>>;
}

function Group({ session, view, title, chain, places }: GroupProps) {
  return (
    <div className="sheet">
      <h3>{title}</h3>
      {Object.entries(places).map(([place, at]) => {
        const kind = PLACES[place as PlaceId] as PartKind;
        const part = at.chosen && at.chosen !== 'none' ? view.refit.parts[at.chosen] : undefined;
        const known = part ? Object.keys(part.facts).length : 0;
        return (
          <Unfold
            key={place}
            summary={
              <>
                {capital(kind.name)}{' '}
                <span className="small soft">
                  {at.chosen === 'none'
                    ? 'none here'
                    : at.chosen === null
                      ? 'not known'
                      : `${known} of ${Object.keys(kind.facts).length} known`}
                </span>
              </>
            }
          >
            <PartPanel session={session} view={view} chain={chain} place={place as PlaceId} />
          </Unfold>
        );
      })}
    </div>
  );
}

/** Fields are only made when a place is opened: a refit has hundreds. */
function Unfold({ summary, children }: { summary: ReactNode; children: ReactNode }) {
  const [open, setOpen] = useState(false);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{summary}</summary>
      {open && children}
    </details>
  );
}
