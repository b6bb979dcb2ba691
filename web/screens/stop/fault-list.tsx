/** Single faults by hazard, worst first, each with what would catch it and a way to see it happen. */
import { useState } from 'react';
import {
  FAULT_GROUPS,
  type FaultGroup,
  type FaultReport,
  groupOf,
  type NamedFault,
} from '../../../engine/circuit/stop/index.ts';
import type { Pairs } from './use-look.ts';

/** Id of the worst of them on the page, for links. */
export const WORST = 'stop-worst-fault';

interface Props {
  readonly faults: readonly FaultReport[];
  readonly shown: string | undefined;
  readonly show: (fault: NamedFault) => void;
}

export function FaultList({ faults, shown, show }: Props) {
  const [open, setOpen] = useState<ReadonlySet<FaultGroup>>(new Set());
  // The worst group there is stands open, so that the answer can lead to the first of it.
  const worst = FAULT_GROUPS.find(
    ({ group, verdict }) => verdict === 'fails' && faults.some((each) => groupOf(each) === group),
  )?.group;
  return (
    <section className="stack" aria-labelledby="stop-faults">
      <h2 id="stop-faults">Every single fault</h2>
      <p className="small soft">
        {faults.length} faults were put in one after another. Each time somebody asked for a stop, took it
        back and tried to start again.
      </p>
      {FAULT_GROUPS.map(({ group, title, verdict }) => {
        const own = faults.filter((each) => groupOf(each) === group);
        if (own.length === 0) return null;
        return (
          <details
            key={group}
            className="sheet"
            open={group === worst ? true : undefined}
            onToggle={(event) => {
              const { open: isOpen } = event.currentTarget;
              setOpen((before) => (isOpen ? new Set([...before, group]) : before));
            }}
          >
            <summary>
              <span className={`verdict ${verdict}`}>
                {title}: {own.length}
              </span>
            </summary>
            {(group === worst || open.has(group)) && (
              <ul className="stop-faults">
                {own.map((report, at) => (
                  <Row
                    key={report.fault.id}
                    id={group === worst && at === 0 ? WORST : undefined}
                    report={report}
                    shown={shown === report.fault.id}
                    show={show}
                  />
                ))}
              </ul>
            )}
          </details>
        );
      })}
    </section>
  );
}

function Row({
  id,
  report,
  shown,
  show,
}: {
  id: string | undefined;
  report: FaultReport;
  shown: boolean;
  show: Props['show'];
}) {
  const { fault, judged, says, catches } = report;
  const serious = judged.verdict === 'dangerous' || judged.verdict === 'unnoticed';
  return (
    <li id={id} data-fault={fault.id}>
      <p>{says}</p>
      {serious && (
        <p className="small">
          <strong>What catches it:</strong> {catches}
        </p>
      )}
      <button
        type="button"
        aria-pressed={shown}
        onClick={() => show(fault)}
        aria-label={`Show me: ${fault.id}`}
      >
        Show me
      </button>
    </li>
  );
}

export function PairList({ pairs, seek }: { pairs: Pairs | undefined; seek: (go: boolean) => void }) {
  return (
    <section className="stack" aria-labelledby="stop-pairs">
      <h2 id="stop-pairs">Two faults, the first unnoticed</h2>
      <p className="row">
        <button type="button" onClick={() => seek(!pairs?.running)}>
          {pairs?.running ? 'Stop looking' : 'Look for pairs'}
        </button>
        <span role="status" className="small soft">
          {pairs && `${pairs.done} of ${pairs.all} pairs tried, ${pairs.found.length} dangerous.`}
        </span>
      </p>
      {pairs && pairs.found.length > 0 && (
        <ul className="small">
          {pairs.found.slice(0, 60).map((says) => (
            <li key={says}>{says}</li>
          ))}
          {pairs.found.length > 60 && <li>… and {pairs.found.length - 60} more</li>}
        </ul>
      )}
    </section>
  );
}
