/** A run drawn against time, what happened when, and its numbers. */
import { useMemo } from 'react';
import { formatQuantity } from '../../../engine/quantity/index.ts';
import { useWidth } from '../../pictures/use-width.ts';
import { getPerson } from '../../state/person.ts';
import { CircleChart } from './circle.tsx';
import { panelsOf } from './panels.ts';
import type { MoveKind } from './parts.ts';
import { RunTable } from './run-table.tsx';
import { TimeChart } from './time-chart.tsx';
import type { Kept, Shown } from './use-run.ts';

export function Charts({ now, kept, kind }: { now: Shown; kept: Kept | undefined; kind: MoveKind }) {
  const [ref, width] = useWidth<HTMLDivElement>();
  const { system } = getPerson();
  const panels = useMemo(() => panelsOf(now, kept, system), [now, kept, system]);
  const { run } = now;
  const until = Math.max(run.until, now.beside?.run.until ?? 0, kept?.run.until ?? 0);
  const said = run.events.filter(({ kind: each }) => each !== 'stick' && each !== 'slip').slice(0, 12);
  return (
    <div className="sheet">
      <div ref={ref}>
        {width > 0 && kind === 'circle' && run.circle && (
          <CircleChart now={run.circle} kept={kept?.run.circle ?? undefined} width={Math.min(width, 460)} />
        )}
        {width > 0 && <TimeChart panels={panels} events={run.events} width={width} until={until} />}
      </div>
      {said.length > 0 && (
        <details>
          <summary>What happened when</summary>
          <ol className="happened">
            {said.map((event) => (
              <li key={`${event.time} ${event.kind} ${event.axis}`}>
                {formatQuantity(event.time * 1000, '1', { digits: 4 })} ms: {event.sentence}
              </li>
            ))}
          </ol>
        </details>
      )}
      <RunTable run={run} system={system} />
    </div>
  );
}
