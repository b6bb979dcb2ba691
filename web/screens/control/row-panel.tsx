/** One need of one control: why it is there, its answer to fill in, what to ask the seller. */

import { useEffect, useRef, useState } from 'react';
import type { ControlReport } from '../../../engine/control/index.ts';
import { factSpec } from '../../../engine/parts/index.ts';
import { capital } from '../../../engine/quantity/words.ts';
import { FactField } from '../../parts/fact-field.tsx';
import { VerdictWord } from '../../parts/verdict.tsx';
import type { Session, View } from '../../state/session.ts';
import type { Picked } from './needs-table.tsx';

interface Props {
  readonly session: Session;
  readonly view: View;
  readonly report: ControlReport;
  readonly picked: Picked;
}

export function RowPanel({ session, view, report, picked }: Props) {
  const panel = useRef<HTMLElement>(null);
  const [copied, setCopied] = useState(false);
  useEffect(() => {
    if (matchMedia('(max-width: 999px)').matches) panel.current?.scrollIntoView({ block: 'start' });
  }, []);
  const candidate = report.candidates.find(({ part }) => part.id === picked.candidate);
  const row = candidate?.rows.find(({ id }) => id === picked.row);
  if (!candidate || !row) return null;
  const need = report.needs.needs.find(({ id }) => id === row.id);
  const signal = report.signals.find(({ sort }) => sort === row.id);
  const why = need?.why ?? signal?.from ?? [];
  const job = view.refit.parts[view.refit.places.job?.chosen ?? ''];
  const recorded = job?.facts['control-waived']?.value;
  const waived = recorded?.kind === 'choices' ? recorded.options : [];
  const ids = need
    ? [need.id]
    : row.paths.map((path) => path.split('.').at(-1)!).filter((id) => id !== 'inputs-take');
  const waive = (): void => {
    const next = row.waived
      ? waived.filter((each) => !ids.includes(each))
      : [...new Set([...waived, ...ids])];
    void session.commit('job.control-waived', next.length > 0 ? next.join(', ') : 'unknown', 'told');
  };
  return (
    <section
      className="sheet"
      ref={panel}
      aria-label={`${row.name}, ${candidate.part.name}`}
      style={{ scrollMarginTop: '1rem' }}
    >
      <h2>{capital(row.name)}</h2>
      <p>
        <VerdictWord verdict={row.verdict} /> {candidate.part.name}: {row.says}. Asked: {row.asked}.
      </p>
      <p className="small">
        <strong>Why:</strong> {why.join('; ')}
      </p>
      {row.paths.map((path) => {
        const fact = path.split('.').at(-1)!;
        return (
          <FactField
            key={path}
            session={session}
            view={view}
            path={path}
            spec={factSpec('control', fact)!}
            fact={candidate.part.facts[fact]}
            guide
          />
        );
      })}
      <div className="row">
        <button type="button" onClick={waive}>
          {row.waived ? 'I need it after all' : 'I can do without'}
        </button>
      </div>
      {candidate.ask !== '' && (
        <details>
          <summary>What to ask the seller</summary>
          <pre className="control-ask">{candidate.ask}</pre>
          <button
            type="button"
            onClick={() => {
              void navigator.clipboard?.writeText(candidate.ask).then(() => setCopied(true));
            }}
          >
            Copy it
          </button>
          <span role="status" className="small soft">
            {copied ? ' Copied.' : ''}
          </span>
        </details>
      )}
    </section>
  );
}
