/** Control: what it must do, which of those offered can, every input and output, and what to ask before buying. */
import { useState } from 'react';
import { Link } from 'wouter';
import { censusCsv, SIGNALS, type Signal } from '../../engine/control/index.ts';
import { factSpec } from '../../engine/parts/index.ts';
import { FactField } from '../parts/fact-field.tsx';
import { VerdictWord } from '../parts/verdict.tsx';
import type { Session, View } from '../state/session.ts';
import { NeedsTable, type Picked } from './control/needs-table.tsx';
import { RowPanel } from './control/row-panel.tsx';
import { save } from './control/save.ts';
import { useControl } from './control/use-control.ts';
import { PartPanel } from './part-panel.tsx';
import './control/control.css';
import { Scroll } from '../parts/scroll.tsx';

interface Props {
  readonly session: Session;
  readonly view: View;
}

const WHY: Readonly<Record<Signal['by'], string>> = {
  refit: 'the machine has it',
  habit: 'usual',
  wiring: 'drawn in the wiring',
  wish: 'you asked for it',
};
const WISHES = ['control-wanted', 'inputs-besides', 'outputs-besides', 'longest-program'] as const;

export default function ControlPage({ session, view }: Props) {
  const report = useControl(view.refit);
  const [picked, setPicked] = useState<Picked>();
  if (!report) return <p role="status">Comparing …</p>;
  const { needs, signals, candidates } = report;
  const chosen = candidates.find((each) => each.chosen);
  const job = view.refit.parts[view.refit.places.job?.chosen ?? ''];
  const csv = (): void =>
    save(
      'inputs-outputs.csv',
      'text/csv',
      censusCsv(needs.census, ({ sort, from, by }) => [SIGNALS[sort].way, SIGNALS[sort].name, from, WHY[by]]),
    );
  return (
    <div className="stack">
      <div>
        <h1>Can the control do all you need?</h1>
        {chosen ? (
          <p>
            <VerdictWord verdict={chosen.verdict} /> {chosen.sentence}
          </p>
        ) : (
          <p>No control is chosen yet.</p>
        )}
        {candidates
          .filter((each) => !each.chosen)
          .map((each) => (
            <p key={each.part.id} className="small">
              <VerdictWord verdict={each.verdict} /> {each.part.name}. {each.sentence}
            </p>
          ))}
      </div>
      <div className="columns two">
        <section aria-labelledby="control-rows">
          <h2 id="control-rows">Row by row</h2>
          <p className="small soft">
            Worked out from axes, drives, <Link href={`/refit/${session.id}/work`}>threads and taps</Link>,{' '}
            <Link href={`/refit/${session.id}/auxiliaries`}>auxiliaries</Link> and the stop circuit. Press a
            cell to see why, and to answer it.
          </p>
          <NeedsTable report={report} picked={picked} pick={setPicked} />
        </section>
        <div className="stack">
          {picked && (
            <RowPanel
              key={`${picked.row} ${picked.candidate}`}
              session={session}
              view={view}
              report={report}
              picked={picked}
            />
          )}
          <details className="sheet" open={!picked}>
            <summary>What else you want of it</summary>
            {WISHES.map((fact) => (
              <FactField
                key={fact}
                session={session}
                view={view}
                path={`job.${fact}`}
                spec={factSpec('job', fact)!}
                fact={job?.facts[fact]}
              />
            ))}
          </details>
          <details className="sheet">
            <summary>Controls that could go here</summary>
            <PartPanel session={session} view={view} chain={null} place="control" />
          </details>
        </div>
      </div>
      {needs.unsure.length > 0 && (
        <section aria-labelledby="control-unsure">
          <h2 id="control-unsure">Not in here yet</h2>
          <ul>
            {needs.unsure.map((each) => (
              <li key={each}>{each}</li>
            ))}
          </ul>
        </section>
      )}
      <section aria-labelledby="control-census">
        <div className="row spread">
          <h2 id="control-census">Every input and output</h2>
          <button type="button" onClick={csv}>
            Save as CSV
          </button>
        </div>
        <Scroll label="Inputs and outputs">
          <table className="control-census">
            <thead>
              <tr>
                <th>Kind</th>
                <th>Needed</th>
                <th>With spares</th>
                <th>For</th>
              </tr>
            </thead>
            <tbody>
              {signals.map(({ sort, count, withSpares, from }) => (
                <tr key={sort}>
                  <th scope="row">{SIGNALS[sort].name}</th>
                  <td>{count}</td>
                  <td>{withSpares}</td>
                  <td className="small">{from.join(' · ')}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
        <p className="small soft">
          How many spares, and how many switches an axis has, are{' '}
          <Link href={`/refit/${session.id}/habits`}>habits</Link> you can change.
        </p>
      </section>
    </div>
  );
}
